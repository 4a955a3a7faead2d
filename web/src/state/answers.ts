// answers.ts: which choice of a question stands, counting what still waits in the outbox. Pure.
import type { Choice, EntryDraft } from '../api/shapes';

const sameBody = (a: EntryDraft, b: EntryDraft): boolean => JSON.stringify(sorted(a.body)) === JSON.stringify(sorted(b.body));

/** With the keys of every object in order, so that two drafts compare by what they say. */
function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)).map(([k, v]) => [k, sorted(v)]));
}

/** Index of the choice that was tapped last and waits to be sent, else of those the server holds. */
export function standing(choices: readonly Choice[], waiting: readonly { readonly draft: EntryDraft }[]): readonly number[] {
  const last = waiting.at(-1);
  if (last) {
    const tapped = choices.findIndex((choice) => sameBody(choice.draft, last.draft));
    return tapped >= 0 ? [tapped] : [];
  }
  return choices.flatMap((choice, i) => (choice.chosen ? [i] : []));
}
