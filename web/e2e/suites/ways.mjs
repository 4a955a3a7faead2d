// ways.mjs: one job done three ways: at the page by taps, by the API, and at the shell while the server runs. The records are the same
// but for ids, times, devices and hashes; so are the reports, and the paper that is handed over.
import { spawn } from 'node:child_process';
import { freshId, put } from '../lib/api.mjs';
import { wordsOf } from '../lib/paper.mjs';
import { program } from '../lib/server.mjs';
import { wholeJob } from './job.mjs';

const flat = (text) => text.replace(/\s+/g, ' ').trim();

/**
 * Bodies with who confirmed each and which of the job's entries each points at. What an author had seen differs: the page says up to where
 * its screen had come, which a quick hand leaves a few entries behind; the others follow the newest.
 */
export function canonical(entries) {
  const number = new Map(entries.map((entry) => [entry.id, entry.number]));
  return entries.map(({ by, follows, corrects, body, number: at }) => ({ number: at, by, follows: follows === null ? null : number.get(follows) < at, corrects: corrects.map((id) => number.get(id)), body: { ...body, ...(body.kind === 'booked_in' ? { number: 'of the job' } : {}) } }));
}

async function byApi(server, entries) {
  const job = freshId();
  const ids = new Map();
  let follows = null;
  const list = entries.map(({ id, by, corrects, body }) => {
    const entry = { id: freshId(), by, on: 'another program', at: new Date().toISOString(), follows, corrects: corrects.map((old) => ids.get(old)), body: body.kind === 'booked_in' ? { ...body, number: '801' } : body };
    ids.set(id, entry.id);
    follows = entry.id;
    return entry;
  });
  for (let at = 0; at < list.length; at += 100) await put(server, `/api/jobs/${job}/entries`, { entries: list.slice(at, at + 100) });
  return job;
}

/** As it is typed at the shell: rotor=4, part=rotor:4, open=3,4. */
export const asTyped = (body) => [body.kind, ...Object.entries(body).filter(([name]) => name !== 'kind').map(([name, value]) => {
  if (Array.isArray(value)) return `${name}=${value.join(',')}`;
  if (value && typeof value === 'object') return `${name}=${value.part}${value.part === 'shaft' ? '' : `:${value.number}`}`;
  return `${name}=${value}`;
})];

const shell = (server, words) => new Promise((done, failed) => {
  const child = spawn(program, ['job', ...words, '--data', server.data], { stdio: ['ignore', 'pipe', 'pipe'] });
  let said = '';
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk) => (said += chunk));
  child.once('error', failed);
  child.once('exit', (code) => (code === 0 ? done(said) : failed(new Error(`${words.join(' ')}: ${code}: ${said}`))));
});

/** One call an entry, in its order; the shell finds for itself what an answer takes the place of. */
async function atTheShell(server, entries, people) {
  const number = '802';
  for (const { by, corrects, body } of entries) {
    const words = ['record', number, ...asTyped(body.kind === 'booked_in' ? { ...body, number } : body), '--by', people.find((one) => one.id === by).name];
    if (body.kind === 'withdrawn') words.push('--of', corrects.map((id) => entries.find((one) => one.id === id).number).join(','));
    else if (corrects.length > 0) words.push('--correct');
    await shell(server, words);
  }
  return (await server.get(`/api/jobs?number=${number}`)).jobs[0].id;
}

const isPages = (entries) => entries.length > 50 && entries.at(-1).body.kind === 'released';

/** The job that the page made in this run; made now where there is none. */
async function pagesJob(report, browser, server) {
  const find = async () => {
    const { machines } = await server.get('/api/machines');
    const machine = machines.find((one) => one.name === 'Edge loosener').id;
    for (const job of (await server.get(`/api/machines/${machine}/jobs`)).jobs.filter((one) => one.released)) {
      const entries = await server.entries(job.id);
      if (isPages(entries)) return { job: job.id, entries };
    }
    return undefined;
  };
  const found = await find();
  if (found) return found;
  await wholeJob(report.named('at the page'), browser, server, 'tablet');
  return find();
}

/** The paper without what may differ: job number, times, devices, hashes, and where lines break for them. */
async function paperOf(server, job, numbers) {
  const text = wordsOf(await server.get(`/api/jobs/${job}/sheets/hand-over`, 'bytes'));
  return flat(text.replaceAll(new RegExp(`\\b(${numbers.join('|')})\\b`, 'g'), 'N')).replace(/[0-9a-f]{8}(?: ?[0-9a-f]{8})+/g, 'HASH').replace(/\b\d\d:\d\d\b/g, 'TIME');
}

export async function threeWays(report, browser, server) {
  const { people } = await server.get('/api/people');
  const page = await pagesJob(report, browser, server);
  const api = await byApi(server, page.entries);
  const typed = await atTheShell(server, page.entries, people);
  const wanted = canonical(page.entries);
  const report1 = await server.get(`/api/jobs/${page.job}/report`);
  report.check(wanted.length > 100 && report1.stages.some((stage) => stage.workings.length > 0), 'a whole job was done', wanted.length);
  for (const [way, job] of [['by the API', api], ['at the shell', typed]]) {
    const found = canonical(await server.entries(job));
    const apart = wanted.findIndex((entry, i) => JSON.stringify(entry) !== JSON.stringify(found[i]));
    report.check(apart < 0 && found.length === wanted.length, `${way}: the same entries as at the page`, () => `${JSON.stringify(wanted[apart])} and ${JSON.stringify(found[apart])}`);
    const said = await server.get(`/api/jobs/${job}/report`);
    report.same(said.stages.map((stage) => stage.findings), report1.stages.map((stage) => stage.findings), `${way}: the same findings`);
    report.check(JSON.stringify(said) === JSON.stringify(report1), `${way}: the same report with every working`);
  }
  const numbers = [page.entries[0].body.number, '801', '802'];  // One of them is also the number of an entry: told apart in none.
  const [one, two, three] = await Promise.all([page.job, api, typed].map((job) => paperOf(server, job, numbers)));
  report.check(one.length > 1000 && two.length > 1000, 'each is handed over with a paper');
  for (const [way, other] of [['by the API', two], ['at the shell', three]])
    report.check(other === one, `${way}: the paper says the same`, () => {
      const at = [...one].findIndex((letter, i) => letter !== other[i]);
      return `'${one.slice(at - 60, at + 120)}' and '${other.slice(at - 60, at + 120)}'`;
    });
  // That a difference would be seen: one reading typed wrong, one answer that corrects nothing.
  const planted = structuredClone(page.entries);
  const reading = planted.find((entry) => entry.body.kind === 'bore_read');
  reading.body.diameter = '3.9357 in';
  report.check(JSON.stringify(canonical(planted)) !== JSON.stringify(wanted), 'a planted difference is seen');
}
