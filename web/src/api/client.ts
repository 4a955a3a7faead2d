// client.ts: typed calls to the server. Never throws: an answer is a value, a refusal, or that nobody could be reached.
import { queryOf } from '../lib/places';
import type { ProblemDetails } from './shapes';
import type { paths } from './types.gen';

export type Answer<T> =
  | { readonly kind: 'ok'; readonly value: T; readonly tag: string | null }
  | { readonly kind: 'same' }
  | { readonly kind: 'refused'; readonly status: number; readonly details: ProblemDetails }
  | { readonly kind: 'away' };

type Json<R> = R extends { content: { 'application/json': infer Value } } ? Value : undefined;
type Good<M> = M extends { responses: infer R }
  ? R extends { 200: infer Value } ? Json<Value> : R extends { 201: infer Value } ? Json<Value> : undefined
  : never;
type Body<M> = M extends { requestBody: { content: { 'application/json': infer Value } } } ? Value : never;
type Method<P extends keyof paths, M extends 'get' | 'post'> = paths[P][M];
type Gettable = { [P in keyof paths]: paths[P]['get'] extends undefined ? never : P }[keyof paths];
type Postable = { [P in keyof paths]: paths[P]['post'] extends undefined ? never : P }[keyof paths];

/** What goes into the path's braces and behind the question mark. */
export interface Ask {
  readonly path?: Readonly<Record<string, string>>;
  readonly query?: object;
  /** What the caller has already: the answer may then be 'same'. */
  readonly tag?: string | null | undefined;
  /** What the caller had before him of what he changes in place: refused with 412 where it is another one by now. */
  readonly seen?: string | undefined;
  readonly signal?: AbortSignal;
}

export const get = <P extends Gettable>(path: P, ask: Ask = {}): Promise<Answer<Good<Method<P, 'get'>>>> =>
  call(addressFor(path, ask), { method: 'GET', headers: ask.tag ? { 'If-None-Match': ask.tag } : {}, ...signalOf(ask) });

export const post = <P extends Postable>(
  path: P, body: Body<Method<P, 'post'>>, ask: Ask = {},
): Promise<Answer<Good<Method<P, 'post'>>>> =>
  call(addressFor(path, ask), {
    method: 'POST', headers: { 'Content-Type': 'application/json', ...(ask.seen ? { 'If-Match': ask.seen } : {}) }, body: JSON.stringify(body), ...signalOf(ask),
  });

export const putBlob = (hash: string, blob: Blob): Promise<Answer<unknown>> =>
  call(`/api/blobs/${hash}`, { method: 'PUT', headers: { 'Content-Type': blob.type }, body: blob });

const signalOf = (ask: Ask): { signal?: AbortSignal } => (ask.signal ? { signal: ask.signal } : {});

export function addressFor(path: string, ask: Ask): string {
  const filled = path.replace(/\{(\w+)\}/g, (_, name: string) => encodeURIComponent(ask.path?.[name] ?? ''));
  return filled + queryOf(ask.query ?? {});
}

/** Statuses that say nothing about what was sent: worth another try. */
export const passing = (status: number): boolean => [408, 425, 429].includes(status) || status >= 500;

const kPatience = 20_000;

async function call<T>(address: string, init: RequestInit): Promise<Answer<T>> {
  let reply: Response;
  let text: string;
  try {
    const limit = AbortSignal.timeout(kPatience);
    const signal = init.signal ? AbortSignal.any([init.signal, limit]) : limit;
    reply = await fetch(address, { ...init, signal, credentials: 'same-origin', cache: 'no-store' });
    text = await reply.text();
  } catch {
    return { kind: 'away' };
  }
  if (reply.status === 304) return { kind: 'same' };
  const type = reply.headers.get('Content-Type') ?? '';
  const value = type.includes('json') ? parsed(text) : undefined;
  if (reply.ok) {
    // A proxy or a captive portal that answers for the server has not kept anything.
    if (reply.status !== 204 && value === undefined) return { kind: 'away' };
    return { kind: 'ok', value: value as T, tag: reply.headers.get('ETag') };
  }
  if (value === undefined) return passing(reply.status) ? { kind: 'away' } : refusedPlainly(reply);
  return { kind: 'refused', status: reply.status, details: value as ProblemDetails };
}

const refusedPlainly = (reply: Response): Answer<never> => ({
  kind: 'refused',
  status: reply.status,
  details: { type: 'about:blank', title: reply.statusText || String(reply.status), status: reply.status },
});

function parsed(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}
