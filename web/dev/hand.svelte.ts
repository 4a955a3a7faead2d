// hand.svelte.ts: a hand that keeps nothing: what was tapped is shown, answers wait for ever, one is refused.
import type { EntryDraft } from '../src/api/shapes';
import type { Hand, Waiting } from '../src/state/hand';
import { nothingBegun } from '../src/state/unfinished';

export function sampleHand(): Hand & { readonly said: readonly string[] } {
  let field: string | undefined = $state();
  let marks: readonly string[] = $state.raw([]);
  let said: readonly string[] = $state.raw([]);
  let waiting: readonly (Waiting & { key: string })[] = $state.raw([
    {
      key: 'play_read:refused', id: 'refused', state: 'refused', by: 'bench',
      draft: { corrects: [], body: { kind: 'play_read', rotor: 5, swing: '58 in' } },
      problems: [{ code: 'job.play.too_wide', field: 'swing', given: '58 in', read: '58 in is more than the rotor is wide.',
        allowed: 'Up to 1 in at this radius.', mend: 'Look at the dial again. 58 thou is 0.058 in.' }],
    },
  ]);
  let count = 0;
  const tell = (what: unknown) => { said = [JSON.stringify(what), ...said].slice(0, 6); };
  const put = (drafts: readonly EntryDraft[], key = '') => {
    waiting = [...waiting, ...drafts.map((draft) => ({ key, id: `w${++count}`, state: 'waiting' as const, by: 'bench', draft, problems: [] }))];
    tell(drafts.map((draft) => draft.body));
  };
  return {
    get said() { return said; },
    act: (what) => { if ('record' in what) put(what.record, what.key); else tell(what); },
    record: (drafts, then) => { put(drafts, then?.key); return Promise.resolve(); },
    waiting: (key) => waiting.filter((w) => w.key === key),
    get unjudged() { return waiting.length > 1; },
    drop: (id) => { waiting = waiting.filter((w) => w.id !== id); },
    photo: (file, _draft, says) => { tell({ photo: file.name, says }); return Promise.resolve(); },
    photoAddress: () => '/dev/fixtures/photo.svg',
    offer: () => () => undefined,
    unfinished: nothingBegun,
    get field() { return field; },
    chooseField: (key) => { field = key; },
    moveOn: () => undefined,
    get marks() { return marks; },
    showMarks: (ids) => { marks = ids; },
    readOnly: false,
  };
}
