// hand.ts: what a block may do, handed down by the screen it stands on. A block says what was tapped; the screen keeps it.
import { getContext, setContext } from 'svelte';
import type { Do, EntryDraft, Go, Problem } from '../api/shapes';
import type { Unfinished } from './unfinished';

/** How far an answer has come on its way to the server. */
export interface Waiting {
  /** Of the entry in the outbox. */
  readonly id: string;
  readonly state: 'waiting' | 'refused';
  /** Who tapped it. */
  readonly by: string;
  readonly draft: EntryDraft;
  /** Why it was refused: read, allowed, mend. Empty while waiting. */
  readonly problems: readonly Problem[];
}

export interface Hand {
  /** Does what a tap means: record entries, go somewhere, or open a sheet for the printer. */
  act(what: Do): void;
  /** Keeps drafts as entries: they are safe on the device when this returns. `key`: of the question they answer. */
  record(drafts: readonly EntryDraft[], then?: { key?: string | undefined; go?: Go | undefined }): Promise<void>;
  /** Answers to this question that the server does not hold yet. Reactive. */
  waiting(key: string): readonly Waiting[];
  /** Answers of this job have waited here for longer than a moment: what the server judged before them holds no more. Reactive. */
  readonly unjudged: boolean;
  /** Takes a refused answer out of the outbox. */
  drop(id: string): void;
  /** Keeps a photo (made smaller first), then the entry that names it: blob, type and what it says go into the draft. */
  photo(file: File, draft: EntryDraft, says: string): Promise<void>;
  /** Address of a kept photo, also of one that waits to be sent. */
  photoAddress(blob: string): string;
  /**
   * The keypad says what it would keep for the field `key`; a key elsewhere whose Do names that field ('Keep, then rotor 5')
   * keeps it too. Answers undefined while the figure is not possible. Returns what takes the offer back.
   */
  offer(key: string, draft: () => EntryDraft | undefined): () => void;
  /** What was typed and not kept, by the key of its question. */
  readonly unfinished: Unfinished;
  /** The keypad's field in hand, chosen by a tap in a drawing, a grid or on the keypad. Reactive. */
  readonly field: string | undefined;
  chooseField(key: string | undefined): void;
  /** The last figure of this sheet was kept: the server may choose the part that comes next. */
  moveOn(): void;
  /** Ids in the drawings that belong to the field in hand. Reactive: the keypad says them, the drawings show them. */
  readonly marks: readonly string[];
  showMarks(ids: readonly string[]): void;
  /** Where there is nothing to press: a wall screen, a record that is closed. */
  readonly readOnly: boolean;
}

const key = Symbol('hand');
export const giveHand = (hand: Hand): Hand => setContext(key, hand);
export const takeHand = (): Hand => getContext<Hand>(key);
