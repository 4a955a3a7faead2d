// outbox.ts: answers on their way to the server. Kept on the device first, then sent in order, tried again until the server
// has them or refuses them. A refused one stays until somebody mends or drops it. Nothing is lost and nothing arrives twice:
// the entry's id is made here, and the server keeps an id once.
import { passing, type Answer } from '../api/client';
import type { EntryDraft, EntryIn, Problem, ProblemDetails, Saved } from '../api/shapes';
import type { Shelf } from './shelf';

/** Entries that are kept together or not at all. */
export interface Parcel {
  /** Of its first entry. */
  readonly id: string;
  readonly job: string;
  /** Of the question it answers. */
  readonly key?: string | undefined;
  readonly entries: EntryIn[];
  /** Photos that must be there before the entries are. */
  readonly blobs: string[];
  readonly refused?: Refused | undefined;
}
export interface Refused {
  readonly title: string;
  readonly problems: readonly Problem[];
}

export interface Draft {
  readonly job: string;
  readonly drafts: readonly EntryDraft[];
  readonly by: string;
  /** Last entry of the job that the author has seen; null for a job that is not there yet. */
  readonly follows: string | null;
  readonly key?: string | undefined;
  readonly blobs?: readonly string[] | undefined;
}

export interface Ways {
  readonly shelf: Shelf;
  readonly blobs: Shelf;
  readonly post: (job: string, entries: EntryIn[]) => Promise<Answer<Saved>>;
  readonly putBlob: (hash: string, blob: Blob) => Promise<Answer<unknown>>;
  readonly newId: () => string;
  /** RFC 3339 in UTC with milliseconds. */
  readonly now: () => string;
  readonly device: () => string;
  /** Calls back after so many ms. */
  readonly later: (call: () => void, ms: number) => void;
  /** Something changed: draw it. */
  readonly changed: () => void;
  /** The server keeps these entries now. */
  readonly arrived: (parcel: Parcel, saved: Saved) => void;
  /** This device is not let in: nothing is wrong with what was sent. */
  readonly shutOut: () => void;
}

const kFirstPause = 1000;
const kLongestPause = 30_000;

export class Outbox {
  private parcels: Parcel[] = [];
  /** At the server already, but the screen does not show them yet. */
  private arrivedUnseen: Parcel[] = [];
  private sending: Promise<void> | undefined;
  private pause = kFirstPause;
  private waker = 0;
  private away = false;

  constructor(private readonly ways: Ways) {}

  /** Takes up what an earlier page left behind. */
  async open(): Promise<void> {
    const kept = (await this.ways.shelf.all()) as Parcel[];
    const known = new Set(this.parcels.map((parcel) => parcel.id));
    this.parcels = [...kept.filter((parcel) => !known.has(parcel.id)), ...this.parcels].sort((a, b) => (a.id < b.id ? -1 : 1));
    this.ways.changed();
    this.send();
  }

  get all(): readonly Parcel[] {
    return this.parcels;
  }
  /** Answers of a job to a question that its screen does not show yet. */
  answers(job: string, key: string): readonly Parcel[] {
    return [...this.arrivedUnseen, ...this.parcels].filter((parcel) => parcel.job === job && parcel.key === key);
  }
  /** A screen of the job was fetched; these had arrived (`unseen`) before it was asked for. */
  shown(job: string, arrived: readonly Parcel[]): void {
    this.arrivedUnseen = this.arrivedUnseen.filter((parcel) => parcel.job !== job || !arrived.includes(parcel));
  }
  get unseen(): readonly Parcel[] {
    return this.arrivedUnseen;
  }
  get waiting(): number {
    return this.parcels.reduce((count, parcel) => count + (parcel.refused ? 0 : parcel.entries.length), 0);
  }
  get refused(): number {
    return this.parcels.filter((parcel) => parcel.refused).length;
  }
  /** The last try did not reach the server. */
  get unreached(): boolean {
    return this.away;
  }

  /** Safe on the device when this returns. */
  async keep(draft: Draft): Promise<Parcel> {
    const ids = draft.drafts.map(() => this.ways.newId());
    const earlier = [...this.arrivedUnseen, ...this.parcels].filter((parcel) => parcel.job === draft.job);
    // What its author had seen of the record, not what waits here beside it: others may have written in between, and what is signed
    // without having seen that is void. Only in a job that was never seen yet do entries follow one another.
    let follows = draft.follows ?? earlier.filter((parcel) => !parcel.refused).at(-1)?.entries.at(-1)?.id ?? null;
    // An answer given here before, which the server does not show yet, has been seen by its author too.
    const replaces = draft.key === undefined || draft.drafts.length !== 1 ? [] : earlier
      .filter((parcel) => parcel.key === draft.key && !parcel.refused && parcel.entries.length === 1)
      .map((parcel) => parcel.entries[0]!.id);
    const entries = draft.drafts.map((one, i): EntryIn => {
      const entry: EntryIn = {
        id: ids[i]!, by: draft.by, on: this.ways.device(), at: this.ways.now(), follows,
        corrects: [...one.corrects, ...replaces.filter((id) => !one.corrects.includes(id))],
        // By now whole: who filled the draft saw to it, and the server refuses what is not.
        body: one.body as unknown as EntryIn['body'],
      };
      follows = draft.follows ?? entry.id;
      return entry;
    });
    // What was refused at the same question is answered anew by this.
    const replaced = draft.key === undefined ? [] : earlier.filter((parcel) => parcel.key === draft.key && parcel.refused);
    const parcel: Parcel = { id: ids[0]!, job: draft.job, key: draft.key, entries, blobs: [...(draft.blobs ?? [])] };
    await this.ways.shelf.put(parcel.id, plain(parcel));
    this.parcels.push(parcel);
    for (const old of replaced) await this.drop(old.id);
    this.ways.changed();
    this.send();
    return parcel;
  }

  /** Takes out what was refused, or what has not been sent yet, because somebody said so. */
  async drop(id: string): Promise<void> {
    const parcel = this.parcels.find((one) => one.id === id);
    if (!parcel) return;
    this.parcels = this.parcels.filter((one) => one.id !== id);
    await this.forget(parcel);
    await this.ways.shelf.remove(id);
    this.ways.changed();
  }

  /** The network is back, or the page was opened again: try at once. */
  wake(): void {
    this.pause = kFirstPause;
    this.send();
  }

  /** Ends when there is nothing more to send just now. */
  async settled(): Promise<void> {
    while (this.sending) await this.sending;
  }

  private send(): void {
    if (this.sending) return;
    this.waker += 1;
    this.sending = this.sendAll().finally(() => {
      this.sending = undefined;
    });
  }

  private async sendAll(): Promise<void> {
    for (let parcel = this.first(); parcel; parcel = this.first()) {
      const outcome = await this.sendOne(parcel);
      if (outcome === 'again') return this.tryLater();
      this.pause = kFirstPause;
      this.away = false;
    }
    this.ways.changed();
  }
  private first(): Parcel | undefined {
    return this.parcels.find((parcel) => !parcel.refused);
  }

  private async sendOne(parcel: Parcel): Promise<'done' | 'again'> {
    for (const hash of parcel.blobs) {
      const blob = (await this.ways.blobs.get(hash)) as Blob | undefined;
      if (!blob) continue;
      const reply = await this.ways.putBlob(hash, blob);
      if (reply.kind !== 'ok' && reply.kind !== 'same') return this.judge(parcel, reply);
    }
    const reply = await this.ways.post(parcel.job, parcel.entries);
    if (reply.kind !== 'ok') return this.judge(parcel, reply);
    // Dropped while it was under way: it has arrived all the same, and the record says so.
    this.parcels = this.parcels.filter((one) => one.id !== parcel.id);
    this.arrivedUnseen.push(parcel);
    for (const hash of parcel.blobs) await this.ways.blobs.remove(hash);
    await this.ways.shelf.remove(parcel.id);
    this.ways.arrived(parcel, reply.value);
    this.ways.changed();
    return 'done';
  }

  private async judge(parcel: Parcel, reply: Answer<unknown>): Promise<'done' | 'again'> {
    if (reply.kind === 'refused' && (reply.status === 401 || reply.status === 403)) {
      this.ways.shutOut();
      return 'again';
    }
    if (reply.kind !== 'refused' || passing(reply.status)) return 'again';
    const details: ProblemDetails = reply.details;
    const refused: Parcel = { ...parcel, refused: { title: details.detail ?? details.title, problems: details.problems ?? [] } };
    await this.forget(parcel);
    this.parcels = this.parcels.map((one) => (one.id === parcel.id ? refused : one));
    await this.ways.shelf.put(parcel.id, plain(refused));
    this.ways.changed();
    return 'done';
  }

  /** Entries that will never be at the server are nothing that others can follow or correct. */
  private async forget(gone: Parcel): Promise<void> {
    const ids = new Set(gone.entries.map((entry) => entry.id));
    const before = gone.entries[0]?.follows ?? null;
    const touched = this.parcels.filter((parcel) => parcel.entries.some(
      (entry) => (entry.follows !== null && ids.has(entry.follows) && parcel.id !== gone.id) || entry.corrects.some((id) => ids.has(id))));
    for (const parcel of touched) {
      for (const entry of parcel.entries) {
        if (entry.follows !== null && ids.has(entry.follows)) entry.follows = before;
        entry.corrects = entry.corrects.filter((id) => !ids.has(id));
      }
      await this.ways.shelf.put(parcel.id, plain(parcel));
    }
  }

  private tryLater(): void {
    this.away = true;
    const mine = this.waker;
    const pause = this.pause;
    this.pause = Math.min(2 * this.pause, kLongestPause);
    this.ways.changed();
    this.ways.later(() => {
      if (mine === this.waker) this.send();
    }, pause);
  }
}

/** Without anything that only the screen knows of. */
const plain = (parcel: Parcel): Parcel => JSON.parse(JSON.stringify(parcel)) as Parcel;
