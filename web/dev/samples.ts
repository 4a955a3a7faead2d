// samples.ts: sheets to look at, valid to the contract. All content is invented.
import type { Block, BlockOf, DisplayList, EntryDraft, Question, Sheet, Working } from '../src/api/shapes';
import pictureData from './fixtures/pictures.json';
import workingData from './fixtures/workings.json';

// Written by the program itself from its sample shaft and its demo job: the shapes are the contract's.
const picture = pictureData as unknown as Record<string, DisplayList>;
const working = workingData as unknown as Record<string, Working>;
const drawn = (name: string): DisplayList => picture[name] ?? { width: 10, height: 10, items: [] };
const worked = (name: string): Working => {
  const found = working[name];
  if (!found) throw new Error(`no working ${name}`);
  return found;
};

const id = (n: number) => `018f0000-0000-7000-8000-${String(n).padStart(12, '0')}`;
const draft = (body: EntryDraft['body']): EntryDraft => ({ corrects: [], body });
const at = (time: string) => `2026-02-02T${time}:00.000Z`;
const blob = 'a'.repeat(64);

const ask = (n: number, label: string, reply?: 'yes' | 'no', more: Partial<Question> = {}): Question => ({
  key: `answered:${n}`, label, agreed: true,
  choices: (['yes', 'no'] as const).map((r) => ({ label: r, chosen: reply === r, draft: draft({ kind: 'answered', question: `q${n}`, reply: r }) })),
  said: reply ? [{ entry: id(n), number: n, shown: reply, by: 'Bench', at: at('07:52') }] : [],
  ...(reply ? { undo: draft({ kind: 'withdrawn', reason: '' }) } : {}),
  ...more,
});
const chip = (n: number, label: string, there: boolean): Question => ({
  key: `looked:${n}`, label, agreed: true, said: [],
  choices: [{ label, chosen: there, draft: draft({ kind: 'looked', sign: label, reply: 'yes' }) }],
  ...(there ? { undo: draft({ kind: 'withdrawn', reason: '' }) } : {}),
});
const caution: BlockOf<'caution'> = {
  block: 'caution', head: 'Before you pull', rule: 'The machine’s manual and local rules go first.',
  lines: ['Stand so that a slip cannot throw you. Nobody in the swing of the bar.', 'The foot of the multiplier presses with 675 lbf at 1 ft: hands out of its nip.'],
};
const field = (plane: string, direction: number, next: string, said = '') => ({
  key: `bore:${plane}${direction}`, title: 'Rotor 3, hub bore', label: `Plane ${plane}, direction ${direction}`, kind: 'length', units: ['in', 'mm'], unit: 'in',
  draft: draft({ kind: 'bore_read', rotor: 3, plane, direction, directions: 4, diameter: '', gauge: '' }), into: 'diameter', gauge_into: 'gauge',
  gauges: [{ id: 'G-03', label: 'G-03', chosen: true }, { id: 'G-07', label: 'G-07', chosen: false, overdue: true }],
  said: said ? [{ entry: id(40), number: 40, shown: said, by: 'Bench', at: at('09:14') }] : [], agreed: true, marks: [`plane-${plane}`, `direction-${direction}`],
  reference: { label: 'ring', value: 3.937, unit: 'in' }, before: { label: 'before:', typed: '3.9366' }, next,
});
const flats = (rotor: string, chosen: number): BlockOf<'drawing'> => ({
  block: 'drawing', list: drawn(rotor === 'rotor-4' ? 'endViewOut' : 'endViewRead'), says: 'Rotor 4 from end A: half A on flat 4, half B on flat 2, wanted on flat 1.',
  taps: [1, 2, 3, 4, 5, 6].map((flat) => ({ id: `${rotor}-flat-${flat}`, says: `Half B on flat ${flat}`, do: { record: [draft({ kind: 'mark_seen', rotor: 4, half: 'b', flat })] } })),
  chosen: [`${rotor}-flat-${chosen}`], caption: 'Tap the flat you read. Solid mark: half A, near you. Dashed mark: half B, behind the rotor.',
});
const left = (text: string) => ({ text, align: 'left' as const });
const right = (text: string) => ({ text, align: 'right' as const });

type Sample = Partial<Sheet> & { name: string };
export const sheets: readonly Sample[] = [
  {
    name: 'timing', title: 'Rotor 4, marks as read',
    left: [flats('rotor-4', 2)],
    right: [
      { block: 'switch', label: 'Seen from', choices: [{ label: 'End A', go: { from: 'a' }, chosen: true }, { label: 'End B', go: { from: 'b' }, chosen: false }] },
      { block: 'table', head: [left('Half'), right('read'), right('wanted'), left('')], rows: [
        { cells: [{ text: 'A', tone: 'strong' }, { text: '4', tone: 'strong' }, { text: '4', tone: 'strong' }, { text: 'right', tone: 'in', flag: 'done' }] },
        { cells: [{ text: 'B', tone: 'strong' }, { text: '2', tone: 'out' }, { text: '1', tone: 'strong' }, { text: 'out', tone: 'out', flag: 'stopped' }] } ] },
      { block: 'text', says: 'Half B is one flat out.', size: 'head', tone: 'plain' },
      { block: 'text', says: 'Wanted: flat 1, the same flat as half A of rotor 5. Rotor 5 stayed on the shaft and sets the reference.', size: 'read', tone: 'plain' },
      { block: 'working', open: true, about: '', working: worked('kink') },
    ],
  },
  {
    name: 'inspection', title: 'Rotor 3, hub bore',
    left: [
      { block: 'drawing', list: drawn('hubSection'), says: 'Hub of rotor 3 in half section with planes A and B.', chosen: ['plane-A', 'direction-1'],
        taps: ['A', 'B'].map((plane) => ({ id: `plane-${plane}`, says: `Plane ${plane}`, do: { go: {} }, field: `bore:${plane}1` })), caption: 'Direction 1 is the stamped tine.' },
      { block: 'grid', head: ['Plane', '1', '2', '3', '4'], rows: [
        { label: 'A', cells: [1, 2, 3, 4].map((d) => ({ text: ['3.9365', '3.9364', '3.9366', '3.9365'][d - 1] ?? '', field: `bore:A${d}` })) },
        { label: 'B', cells: [1, 2, 3, 4].map((d) => ({ text: ['3.9362', '3.9361', '', ''][d - 1] ?? '', field: `bore:B${d}` })) } ] },
    ],
    right: [{ block: 'keypad', first: 'bore:A1', fields: ['A', 'B'].flatMap((p) => [1, 2, 3, 4].map((d) => field(p, d, d < 4 ? `bore:${p}${d + 1}` : 'bore:B1', p === 'A' && d === 2 ? '3.9364 in' : ''))) }],
    foot: [
      { block: 'answer', sign: 'tell', word: 'CANNOT TELL', value: 'Plane A: 3.9365 ± 0.0002 in', other: '99.987 ± 0.005 mm, at 68 °F', bar: drawn('gaugeBar'), working: worked('bore'),
        says: ['The reading is inside, but its doubt reaches past the high limit. More readings with G-03 will not settle it: 50 of them still leave ± 0.00015 in.'], do: 'Gauge plane A again with gauge G-07.' },
    ],
  },
  {
    name: 'step', head: [{
      block: 'step', number: 6, of: 19, says: 'Crack nut A loose.', note: 'Half a turn, no more.', stop: true, labels: ['Nut A'],
      tools: ['Bar 5 ft: 180 lbf, too much for one person', 'Multiplier 4 : 1: 45 lbf', 'Socket 2 3/4 in'], cautions: [{ ...caution, lines: ['Power off, locked. Frame chocked.', 'The bar jumps when the nut lets go: keep out of its swing.'] }],
      question: ask(6, 'Does it turn freely now?'), action: { label: 'Done: it turns', tone: 'next', do: { record: [draft({ kind: 'step_done', step: 'crack' })] } },
      back: { label: 'Stuck', tone: 'plain', do: { go: { step: 5 } } } }],
  },
  {
    name: 'booking',
    head: [{ block: 'facts', rows: [{ caption: 'Complaint', value: 'Rotor 3 hot and noisy' }, { caption: 'Clearance', value: '0.0036 to 0.0044 in', working: worked('interference'), other: '0.09 to 0.11 mm' }, { caption: 'Against new', value: 'At least twice as wide.', tone: 'out' }] }],
    left: [
      { block: 'asks', style: 'chips', head: 'By hand and eye, tap what you find', questions: [chip(1, 'rough', true), chip(2, 'grease out', true), chip(3, 'hot', false), chip(4, 'noisy', true)] },
      { block: 'asks', style: 'chips', questions: [{ key: 'mark_seen:4:b', label: 'Half B on flat', agreed: true, said: [{ entry: id(7), number: 7, shown: '2', by: 'Bench', at: at('08:01') }],
        choices: [1, 2, 3, 4, 5, 6].map((flat) => ({ label: String(flat), chosen: flat === 2, draft: draft({ kind: 'mark_seen', rotor: 4, half: 'b', flat }) })), undo: draft({ kind: 'withdrawn', reason: '' }) }] },
      { block: 'note', label: 'Note on rotor 3', into: 'text', draft: draft({ kind: 'note_written', text: '' }), said: [{ entry: id(9), number: 9, shown: 'Grease past seal B, brown.', by: 'Bench', at: at('08:10') }] },
      { block: 'photos', draft: draft({ kind: 'photo_taken' }), photos: [{ blob, says: 'seal B of rotor 3', by: 'Bench', at: at('08:12') }] },
    ],
    right: [{ block: 'keypad', fields: [{ key: 'play_read:refused', title: 'Rotor 5, side play', label: 'Whole swing of the dial', kind: 'length', units: ['in', 'mm'], unit: 'in', draft: draft({ kind: 'play_read', rotor: 5, swing: '' }), into: 'swing', said: [], agreed: true, hint: 'Push and pull, 5 lbf, read the whole swing.', before: { label: 'rotor 2:', typed: '0.031' } }] }],
    foot: [{ block: 'drawing', list: { ...drawn('hubSection'), width: 190 }, says: 'A wide drawing.', taps: [], wide: true, caption: 'Wider than a phone: it scrolls.' }, { block: 'table', caption: 'Suspects so far', aside: 'Rotors 5 to 9 not measured: the order may change.', head: [left(''), left(''), left('')], rows: [
      { cells: [{ text: '1', tone: 'strong' }, { text: 'Rotor 3', tone: 'strong' }, { text: 'play past any new bearing, rough, grease past seal B' }] },
      { cells: [{ text: '2', tone: 'strong' }, { text: 'Rotor 4', tone: 'strong' }, { text: '0.037 ± 0.002 in: cannot tell from new; same hours as 3', sign: 'tell' }] } ] }],
  },
  {
    name: 'stack',
    head: [
      { block: 'asks', style: 'rows', head: 'Before you go on', questions: [ask(1, 'Flange bolts of hanger B in, all 4', 'yes'), ask(2, 'Spacers by their labels: S1, S2, S3, S4', 'yes'), ask(3, 'Seals greased, no lip turned over'),
        ask(4, 'Nut A by hand only, washer on', undefined, { agreed: false, said: [{ entry: id(61), number: 61, shown: 'yes', by: 'Bench', at: at('08:20') }, { entry: id(62), number: 62, shown: 'no', by: 'Lead', at: at('08:24') }], detail: 'A washer lay on the bench at 8:24.' })] },
      { block: 'disagree', head: 'Nut A by hand only, washer on: two answers.', answers: [{ entry: id(61), number: 61, shown: 'yes', by: 'Bench', at: at('08:20') }, { entry: id(62), number: 62, shown: 'no', by: 'Lead', at: at('08:24') }],
        choices: [{ label: 'It is on', chosen: false, draft: draft({ kind: 'answered', reply: 'yes' }) }, { label: 'It is not on', chosen: false, draft: draft({ kind: 'answered', reply: 'no' }) }] },
      { block: 'answer', sign: 'in', word: 'SEATED', says: ['The bar decides it.'], bar: drawn('gaugeBar'), value: '65.906 ± 0.010 in' },
      { block: 'answer', sign: 'out', word: 'OUT', says: ['Above the high limit.'] },
      { block: 'answer', sign: 'stopped', word: '7 of 8. Ring B is missing.', says: ['The old ring is bent: to the scrap box. A new one lies in bin 4, 3 left.'] },
      { block: 'keypad', fields: [{ key: 'fitted:3', title: 'Bearing of rotor 3', label: 'Designation on the ring', kind: 'text', units: [], unit: '', draft: draft({ kind: 'fitted_read', rotor: 3, designation: '' }), into: 'designation', said: [], agreed: true }] },
      { block: 'actions', actions: [{ label: 'Feeler tried', tone: 'next', do: { go: {} } }, { label: 'Print the bench sheet', tone: 'plain', do: { open: '/api/x' } }, { label: 'Release', tone: 'next', blocked: 'Nut B was not read after the run.', do: { go: {} } }] },
    ],
  },
  {
    name: 'plan', head: [{ block: 'ways',
      ways: (['1 Failed only', '2 Everything disturbed', '3 All nine'] as const).map((label, i) => ({ name: `way${i}`, label, advised: i === 1, chosen: false, strip: drawn(`way${i + 1}`),
        action: { label: i === 1 ? 'Owner says yes to 2' : `Ask for ${i + 1}`, tone: i === 1 ? 'next' as const : 'plain' as const, do: { go: {} } } })),
      rows: [
        { label: 'Comes off', cells: [{ text: 'from end A: rotors 1 to 3' }, { text: 'from end A: rotors 1 to 4' }, { text: 'from end A: rotors 1 to 9' }] },
        { label: 'Renewed', cells: [{ text: 'rotor 3', tone: 'strong' }, { text: 'rotors 1 to 4', tone: 'strong' }, { text: 'rotors 1 to 9', tone: 'strong' }] },
        { label: 'Price', cells: [{ text: '$ 418', tone: 'strong', detail: 'work $ 258, parts $ 160' }, { text: '$ 840', tone: 'strong', detail: 'work $ 312, parts $ 528' }, { text: '$ 1 752', tone: 'strong', detail: 'work $ 564, parts $ 1 188' }] },
      ], says: ['Ways 1 and 2 cannot be told apart on money. Way 2 fails less often.'] }],
  },
  {
    name: 'release',
    head: [
      { block: 'standing', complete: false, head: 'Blocked', aside: 'All lifted: Complete, next due 2 260 h.', force: { label: 'Release it blocked', reason_label: 'Why it leaves with things open', draft: draft({ kind: 'released', forced: true, reason: '' }), into: 'reason' },
        rows: [
          { part: 'Nut B', what: 'not checked again after the run', lifted_by: 'Bench, 5 min', action: { label: 'Do it now', tone: 'next', do: { go: { stage: 'torque' } } } },
          { part: 'Rotor 4', what: 'second look at its marks', lifted_by: 'Lead: not who set it', action: { label: 'Ask', tone: 'plain', do: { go: {} } } },
          { part: 'Spacer S3', what: '$ 38 more, not yet agreed', lifted_by: 'Owner', action: { label: 'Ask', tone: 'plain', do: { go: {} } } } ] },
      { block: 'standing', complete: true, head: 'Complete', aside: 'Next due 2 260 h.', rows: [] },
      caution,
      { block: 'signatures', rows: [
        { role: 'Bench', says: '', signed: { by: 'Bench', at: at('14:02') } },
        { role: 'Lead', says: 'second look, then signs', action: { label: 'Sign', tone: 'plain', blocked: 'Rotor 4 has had no second look.', do: { go: {} } } },
        { role: 'Owner', says: 'agrees S3, takes it over' } ] },
      { block: 'log', head: 'What was said', entries: [
        { number: 63, says: 'Plane A, direction 3: 3.9366 in with G-03.', by: 'Bench', at: at('09:20') },
        { number: 62, says: 'Plane A, direction 3: 3.9636 in with G-03.', by: 'Bench', at: at('09:18'), corrected_by: 63 },
        { number: 61, says: 'Rotor 4, half B on flat 3.', by: 'Bench', at: at('09:11'), withdrawn_by: 64 } ] },
    ],
  },
] satisfies readonly Sample[];
export const blocks: readonly Block[] = sheets.flatMap((s) => [...(s.head ?? []), ...(s.left ?? []), ...(s.right ?? []), ...(s.foot ?? [])]);
