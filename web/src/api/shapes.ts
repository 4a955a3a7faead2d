// shapes.ts: short names for the shapes of the contract.
import type { components } from './types.gen';

type Schemas = components['schemas'];
export type Action = Schemas['Action'];
export type Block = Schemas['Block'];
export type BlockOf<Name extends Block['block']> = Extract<Block, { block: Name }>;
export type BenchView = Schemas['BenchView'];
export type Board = Schemas['Board'];
export type BoardRow = Schemas['BoardRow'];
export type Choice = Schemas['Choice'];
export type Customer = Schemas['Customer'];
export type DisplayList = Schemas['DisplayList'];
export type Do = Schemas['Do'];
export type EntryDraft = Schemas['EntryDraft'];
export type EntryIn = Schemas['EntryIn'];
export type Fact = Schemas['Fact'];
export type Field = Schemas['Field'];
export type Figures = Schemas['Figures'];
export type FigureSpec = Schemas['FigureSpec'];
export type Flag = Schemas['Flag'];
export type GaugeCard = Schemas['GaugeCard'];
export type GaugesView = Schemas['GaugesView'];
export type Go = Schemas['Go'];
export type Machine = Schemas['Machine'];
export type MachineView = Schemas['MachineView'];
export type Person = Schemas['Person'];
export type Problem = Schemas['Problem'];
export type ProblemDetails = Schemas['ProblemDetails'];
export type Question = Schemas['Question'];
export type Role = Schemas['Role'];
export type Said = Schemas['Said'];
export type Saved = Schemas['Saved'];
export type ShaftCheck = Schemas['ShaftCheck'];
export type ShaftRecord = Schemas['ShaftRecord'];
export type Sheet = Schemas['Sheet'];
export type Stage = Schemas['Stage'];
export type StageMark = Schemas['StageMark'];
export type StationCell = Schemas['StationCell'];
export type Stock = Schemas['Stock'];
export type StockMoves = Schemas['StockMoves'];
export type StockRow = Schemas['StockRow'];
export type Strip = Schemas['Strip'];
export type StudyCell = Schemas['StudyCell'];
export type StudyError = Schemas['StudyError'];
export type StudyOffer = Schemas['StudyOffer'];
export type StudyPlot = Schemas['StudyPlot'];
export type StudyRow = Schemas['StudyRow'];
export type StudyView = Schemas['StudyView'];
export type StudyWay = Schemas['StudyWay'];
export type StudyWayIn = Schemas['StudyWayIn'];
export type Tone = Schemas['Tone'];
export type Working = Schemas['Working'];
export type Workshop = Schemas['Workshop'];
export type Units = 'metric' | 'inch';

/** The draft with texts put into fields of its body: what a keypad or a note was given. */
export function filled(draft: EntryDraft, values: Readonly<Record<string, unknown>>): EntryDraft {
  return { ...draft, body: { ...(draft.body as object), ...values } as EntryDraft['body'] };
}
