// touches.ts: a wet or greasy screen sends stray touches. Two within 80 ms on different keys count as none.

export const kTogether = 80;

/** Told of every touch that goes down on a key; says which keys' presses are not to be taken. */
export class Touches<Key> {
  private last: { key: Key; at: number } | undefined;
  private void_ = new Map<Key, number>();

  /** `at` in ms. True: this touch and the one before it count as none. */
  down(key: Key, at: number): boolean {
    const before = this.last;
    this.last = { key, at };
    if (before === undefined || before.key === key || at - before.at > kTogether) {
      this.void_.delete(key);
      return false;
    }
    this.void_.set(before.key, at);
    this.void_.set(key, at);
    return true;
  }

  /** Whether a press that ends at `at` counts. Asked once a press. */
  counts(key: Key, at: number): boolean {
    const since = this.void_.get(key);
    this.void_.delete(key);
    return since === undefined || at - since > 2000;
  }
}
