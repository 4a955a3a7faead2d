// bench.svelte.ts: the bench screen of one job: what the server shows of it, and what a block may do on it.
import type { BenchView, Do, EntryDraft, Go } from '../api/shapes';
import { filled } from '../api/shapes';
import { follow, type Spot } from '../lib/places';
import type { Hand, Waiting } from './hand';
import { makePhoto } from './photos';
import { router } from './router.svelte';
import { session } from './session.svelte';
import { settings } from './settings.svelte';
import { unfinishedIn, type Unfinished } from './unfinished';
import { View } from './views.svelte';

/** Without what is not named, so that it does not hide what is. */
const named = (spot: Spot): Spot => Object.fromEntries(Object.entries(spot).filter(([, value]) => value !== undefined));

const judgesNothing: ReadonlySet<string> = new Set(['note_written', 'photo_taken']);

type Then = { key?: string | undefined; go?: Go | undefined; blobs?: readonly string[] };

export class Bench implements Hand {
  readonly readOnly = false;
  field = $state<string | undefined>();
  marks = $state.raw<readonly string[]>([]);
  /** Somebody tapped before signing on: what happens once they have. */
  held = $state.raw<(() => void) | undefined>();
  unjudged = $state(false);
  private arrived: ReturnType<typeof session.unseen> = [];
  readonly screen = new View<BenchView>(
    () => session.shelf('views'),
    () => {
      session.shown(this.job, this.arrived);
      // What the server decided stays: a screen that moved to another part by itself, because somebody else entered
      // something, would let a hand tap for the wrong one.
      const shown = this.screen.value;
      if (shown) this.pinned ??= { stage: shown.stage, station: shown.station };
    },
  );
  private pinned: Spot | undefined;
  private offers = new Map<string, () => EntryDraft | undefined>();
  private asked: { spot: Spot; units: string | undefined; by: string | undefined } | undefined;

  readonly unfinished: Unfinished;

  constructor(readonly job: string) {
    this.unfinished = unfinishedIn(() => sessionStorage, job);
  }

  fetch(spot: Spot, units: string | undefined, by: string | undefined): void {
    const before = this.asked?.spot;
    if (!before || JSON.stringify(before) !== JSON.stringify(spot)) this.pinned = undefined;
    this.asked = { spot, units, by };
    this.again();
  }
  again(): void {
    if (!this.asked) return;
    this.arrived = session.unseen().filter((parcel) => parcel.job === this.job);
    void this.screen.show('/api/jobs/{id}/bench', {
      path: { id: this.job }, query: { ...this.pinned, ...named(this.asked.spot), units: this.asked.units, by: this.asked.by },
    });
  }
  /** Where the next-step line or a tap leads. */
  go(to: Go): void {
    router.go(follow(router.place, to));
  }

  act(what: Do): void {
    if ('record' in what) {
      const offered = what.key === undefined ? undefined : this.offers.get(what.key)?.();
      if (offered && what.key !== undefined) this.unfinished.put(what.key, undefined);
      void this.record(offered ? [offered, ...what.record] : what.record, what);
    } else if ('go' in what) {
      this.go(what.go);
    } else {
      window.open(what.open, '_blank', 'noopener');
    }
  }
  async record(drafts: readonly EntryDraft[], then: Then = {}): Promise<void> {
    const by = settings.person;
    if (by === undefined || session.nameOf(by) === '') {
      this.held = () => void this.record(drafts, then);
      return;
    }
    await session.keep({
      job: this.job, drafts, by, follows: this.screen.value?.job.last ?? null, key: then.key, blobs: then.blobs,
    });
    if (then.go) this.go(then.go);
  }
  waiting(key: string): readonly Waiting[] {
    return session.answers(this.job, key).flatMap((parcel) => parcel.entries.map((entry): Waiting => ({
      id: parcel.id,
      state: parcel.refused ? 'refused' : 'waiting',
      by: session.nameOf(entry.by),
      draft: { corrects: entry.corrects, body: entry.body },
      problems: parcel.refused?.problems ?? [],
    })));
  }
  /** Something that the server judges by is not there yet. Words and photos judge nothing. */
  get unsent(): boolean {
    return session.parcels.some((parcel) => parcel.job === this.job && !parcel.refused && parcel.entries.some((entry) => !judgesNothing.has(entry.body.kind)));
  }
  drop(id: string): void {
    session.drop(id);
  }
  async photo(file: File, draft: EntryDraft, says: string): Promise<void> {
    const { hash, blob } = await makePhoto(file);
    await session.keepPhoto(hash, blob);
    await this.record([filled(draft, { blob: hash, type: blob.type, says })], { blobs: [hash] });
  }
  photoAddress(blob: string): string {
    return session.photoAddress(blob);
  }
  offer(key: string, draft: () => EntryDraft | undefined): () => void {
    this.offers.set(key, draft);
    return () => {
      if (this.offers.get(key) === draft) this.offers.delete(key);
    };
  }
  chooseField(key: string | undefined): void {
    this.field = key;
  }
  moveOn(): void {
    if (this.asked?.spot.station === undefined) this.pinned = undefined;
  }
  showMarks(ids: readonly string[]): void {
    this.marks = ids;
  }
}
