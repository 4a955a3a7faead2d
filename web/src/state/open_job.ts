// open_job.ts: the job of a machine that is not released yet, for who would book it in a second time.
import { get } from '../api/client';

export interface OpenJob { readonly id: string; readonly number: string }

/** The newest; undefined where there is none, or nobody can say now. */
export async function openJobOf(machine: string): Promise<OpenJob | undefined> {
  const reply = await get('/api/jobs');
  if (reply.kind !== 'ok') return undefined;
  const open = reply.value.jobs.filter((job) => job.machine === machine && !job.released);
  return open.sort((a, b) => (a.id < b.id ? 1 : -1))[0];
}
