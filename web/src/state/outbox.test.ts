import { describe, expect, it } from 'vitest';
import type { Answer } from '../api/client';
import type { EntryDraft, EntryIn, Saved } from '../api/shapes';
import { Outbox, type Parcel, type Ways } from './outbox';
import { memoryShelf, type Shelf } from './shelf';

const draft = (says: string, corrects: string[] = []): EntryDraft => ({ corrects, body: { kind: 'note_written', text: says } as never });
const refusal = (status: number): Answer<never> => ({
  kind: 'refused', status,
  details: { type: 'x', title: 'Not possible', status, problems: [{ code: 'c', field: 'diameter', given: '4', read: 'r', allowed: 'a', mend: 'm' }] },
});

/** A server that keeps an id once, and a device whose shelves outlive the page. */
class Bench {
  shelf: Shelf = memoryShelf();
  blobs: Shelf = memoryShelf();
  kept: EntryIn[] = [];
  photos: string[] = [];
  replies: (Answer<Saved> | 'lost on the way back')[] = [];
  timers: { call: () => void; ms: number }[] = [];
  arrived: Parcel[] = [];
  shut = 0;
  count = 0;
  ways(): Ways {
    return {
      shelf: this.shelf, blobs: this.blobs,
      post: async (_job, entries) => this.take(entries),
      putBlob: async (hash) => (this.photos.push(hash), { kind: 'ok', value: {}, tag: null }),
      newId: () => `id-${String((this.count += 1)).padStart(4, '0')}`,
      now: () => '2026-02-12T07:52:00.000Z',
      device: () => 'tablet 1',
      later: (call, ms) => void this.timers.push({ call, ms }),
      changed: () => undefined,
      arrived: (parcel) => void this.arrived.push(parcel),
      shutOut: () => void (this.shut += 1),
    };
  }
  take(entries: EntryIn[]): Answer<Saved> {
    const reply = this.replies.shift();
    if (reply && reply !== 'lost on the way back') return reply;
    for (const entry of entries) if (!this.kept.some((one) => one.id === entry.id)) this.kept.push(structuredClone(entry));
    return reply ? { kind: 'away' } : { kind: 'ok', value: { saved: [], head: '', sequence: 1 }, tag: null };
  }
}
const ask = (says: string, more: { key?: string; corrects?: string[]; follows?: string; blobs?: string[] } = {}) => ({
  job: 'job', drafts: [draft(says, more.corrects)], by: 'anna', follows: more.follows ?? 'seen', key: more.key, blobs: more.blobs,
});

describe('the outbox', () => {
  it('sends what was kept, once, in order, as its author', async () => {
    const bench = new Bench();
    const outbox = new Outbox(bench.ways());
    await outbox.keep(ask('one'));
    await outbox.keep({ ...ask('two'), by: 'ben' });
    await outbox.settled();
    expect(bench.kept.map((entry) => [entry.by, entry.on, entry.follows])).toEqual([
      ['anna', 'tablet 1', 'seen'], ['ben', 'tablet 1', 'seen'],
    ]);
    expect(outbox.waiting).toBe(0);
    expect(await bench.shelf.all()).toEqual([]);
    expect(bench.arrived).toHaveLength(2);
  });

  it('keeps on the device before it sends, and goes on after a reload', async () => {
    const bench = new Bench();
    bench.replies = [{ kind: 'away' }];
    const first = new Outbox(bench.ways());
    await first.keep(ask('one'));
    expect(await bench.shelf.all()).toHaveLength(1);
    await first.settled();
    expect([first.waiting, first.unreached]).toEqual([1, true]);

    const second = new Outbox(bench.ways());
    await second.open();
    await second.settled();
    expect(bench.kept.map((entry) => entry.id)).toEqual(['id-0001']);
    expect(second.waiting).toBe(0);
  });

  it('arrives once when the answer of the server was lost', async () => {
    const bench = new Bench();
    bench.replies = ['lost on the way back'];
    const outbox = new Outbox(bench.ways());
    await outbox.keep(ask('one'));
    await outbox.settled();
    expect(outbox.waiting).toBe(1);
    bench.timers.shift()!.call();
    await outbox.settled();
    expect(bench.kept).toHaveLength(1);
    expect(outbox.waiting).toBe(0);
  });

  it('waits longer each time, and not at all when the network is back', async () => {
    const bench = new Bench();
    bench.replies = Array.from({ length: 8 }, () => ({ kind: 'away' as const }));
    const outbox = new Outbox(bench.ways());
    await outbox.keep(ask('one'));
    await outbox.settled();
    const pauses: number[] = [];
    for (let i = 0; i < 7; ++i) {
      const timer = bench.timers.shift()!;
      pauses.push(timer.ms);
      timer.call();
      await outbox.settled();
    }
    expect(pauses).toEqual([1000, 2000, 4000, 8000, 16000, 30000, 30000]);
    outbox.wake();
    await outbox.settled();
    expect(outbox.waiting).toBe(0);
  });

  it('tries again what says nothing about the entry', async () => {
    for (const status of [403, 408, 429, 500, 503]) {
      const bench = new Bench();
      bench.replies = [refusal(status)];
      const outbox = new Outbox(bench.ways());
      await outbox.keep(ask('one'));
      await outbox.settled();
      expect([status, outbox.waiting, outbox.refused]).toEqual([status, 1, 0]);
      expect(bench.shut).toBe(status === 403 ? 1 : 0);
    }
  });

  it('keeps a refused answer with its problem, also after a reload, and sends the rest', async () => {
    const bench = new Bench();
    bench.replies = [refusal(422)];
    const outbox = new Outbox(bench.ways());
    await outbox.keep(ask('bad', { key: 'bore_read/3/A/2' }));
    await outbox.keep(ask('good'));
    await outbox.settled();
    expect([outbox.waiting, outbox.refused]).toEqual([0, 1]);
    expect(bench.kept.map((entry) => entry.id)).toEqual(['id-0002']);

    const later = new Outbox(bench.ways());
    await later.open();
    await later.settled();
    expect(later.all[0]!.refused!.problems[0]!.mend).toBe('m');
    await later.drop('id-0001');
    expect(await bench.shelf.all()).toEqual([]);
  });

  it('lets nothing follow or correct an entry that never came', async () => {
    const bench = new Bench();
    bench.replies = [{ kind: 'away' }, { kind: 'away' }];
    const outbox = new Outbox(bench.ways());
    await outbox.keep(ask('first', { key: 'k' }));
    await outbox.settled();
    await outbox.keep(ask('second', { key: 'k', corrects: ['old'] }));
    await outbox.settled();
    expect(outbox.all[1]!.entries[0]).toMatchObject({ follows: 'seen', corrects: ['old', 'id-0001'] });
    bench.replies = [refusal(422)];
    outbox.wake();
    await outbox.settled();
    expect(bench.kept[0]).toMatchObject({ id: 'id-0002', follows: 'seen', corrects: ['old'] });
  });

  it('takes out a refused answer when its question is answered anew', async () => {
    const bench = new Bench();
    bench.replies = [refusal(422)];
    const outbox = new Outbox(bench.ways());
    await outbox.keep(ask('bad', { key: 'k' }));
    await outbox.settled();
    await outbox.keep(ask('mended', { key: 'k' }));
    await outbox.settled();
    expect([outbox.waiting, outbox.refused]).toEqual([0, 0]);
    expect(bench.kept).toHaveLength(1);
    expect(bench.kept[0]).toMatchObject({ follows: 'seen', corrects: [] });
  });

  it('sends a photo before the entry that names it, and keeps it until then', async () => {
    const bench = new Bench();
    await bench.blobs.put('hash', new Blob(['x']));
    bench.replies = [{ kind: 'away' }];
    const outbox = new Outbox(bench.ways());
    await outbox.keep(ask('photo', { blobs: ['hash'] }));
    await outbox.settled();
    expect(await bench.blobs.get('hash')).toBeDefined();
    outbox.wake();
    await outbox.settled();
    expect(bench.photos).toEqual(['hash', 'hash']);
    expect(bench.kept).toHaveLength(1);
    expect(await bench.blobs.get('hash')).toBeUndefined();
  });

  it('counts an answer as seen by its author before the screen shows it', async () => {
    const bench = new Bench();
    const outbox = new Outbox(bench.ways());
    await outbox.keep(ask('no', { key: 'k' }));
    await outbox.settled();
    expect(outbox.answers('job', 'k')).toHaveLength(1);
    await outbox.keep(ask('yes', { key: 'k' }));
    await outbox.settled();
    expect(bench.kept[1]!.corrects).toEqual(['id-0001']);
    outbox.shown('job', outbox.unseen);
    expect(outbox.answers('job', 'k')).toEqual([]);
  });

  it('says of each entry what its author had seen, not what waits beside it', async () => {
    const bench = new Bench();
    bench.replies = [{ kind: 'away' }];
    const outbox = new Outbox(bench.ways());
    await outbox.keep({ ...ask('a'), drafts: [draft('a'), draft('b')] });
    await outbox.keep(ask('c', { follows: 'seen later' }));
    await outbox.settled();
    outbox.wake();
    await outbox.settled();
    expect(bench.kept.map((entry) => entry.follows)).toEqual(['seen', 'seen', 'seen later']);
  });

  it('chains the entries of a job that was never seen', async () => {
    const bench = new Bench();
    bench.replies = [{ kind: 'away' }];
    const outbox = new Outbox(bench.ways());
    await outbox.keep({ ...ask('booked'), follows: null });
    await outbox.keep({ ...ask('a'), drafts: [draft('a'), draft('b')], follows: null });
    await outbox.settled();
    outbox.wake();
    await outbox.settled();
    expect(bench.kept.map((entry) => entry.follows)).toEqual([null, 'id-0001', 'id-0002']);
  });
});
