// typing.ts: figures that stand in a keypad and are not kept yet. A tap whose Do names a field (`key`) keeps its figure too:
// the screen takes it from here.
import type { EntryDraft } from '../api/shapes';

type Take = () => EntryDraft | undefined;
const held = new Map<string, Take>();

/** The keypad offers the figure of a field; `take` clears it. Returns how to stop offering. */
export function offer(key: string, take: Take): () => void {
  held.set(key, take);
  return () => {
    if (held.get(key) === take) held.delete(key);
  };
}
/** The figure typed for this field as an entry, taken out of the keypad; undefined where none is typed. */
export const takeTyped = (key: string): EntryDraft | undefined => held.get(key)?.();
