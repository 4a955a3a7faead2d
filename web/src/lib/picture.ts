// picture.ts: where the items of a display list lie and what they look like. Millimetres, y downwards, angles clockwise
// from 12 o'clock; the page turns them into SVG (parts/Picture.svelte). Pure.
import type { components } from '../api/types.gen';
import { pieces } from './number';

type Schemas = components['schemas'];
export type DisplayList = Schemas['DisplayList'];
export type Item = DisplayList['items'][number];
export type PathItem = Schemas['PathItem'];
export type ArcItem = Schemas['ArcItem'];
export type TextItem = Schemas['TextItem'];
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}
export type Hatch = 'cut' | 'cut_next' | 'renew';

/** Screen pixels a millimetre at which line widths and type have the sizes of the page: 16 px of text are 3.5 mm. */
export const naturalScale = 16 / 3.5;
/** Below this a drawing cannot be read: its column scrolls instead. Pixels a millimetre. */
export const leastScale = 3;
/** Nothing on a screen is smaller. */
export const leastText = 14;
const lineHeight = 1.35;

const round = (value: number): string => String(Number(value.toFixed(3)));

export const pathData = ({ points, closed }: Pick<PathItem, 'points' | 'closed'>): string =>
  points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${round(x ?? 0)} ${round(y ?? 0)}`).join('') + (closed ? 'Z' : '');

/** Point of a circle at an angle. */
export function onArc([x = 0, y = 0]: readonly number[], radius: number, degrees: number): [number, number] {
  const angle = (degrees * Math.PI) / 180;
  return [x + radius * Math.sin(angle), y - radius * Math.cos(angle)];
}

export function arcData({ centre, radius, from, to }: Pick<ArcItem, 'centre' | 'radius' | 'from' | 'to'>): string {
  const point = (degrees: number) => onArc(centre, radius, degrees).map(round).join(' ');
  const r = round(radius);
  const turn = to - from;
  const sweep = turn >= 0 ? 1 : 0;
  // SVG draws nothing for an arc that ends where it starts: a full circle is two halves.
  if (Math.abs(turn) >= 360 - 1e-6)
    return `M${point(from)}A${r} ${r} 0 1 ${sweep} ${point(from + 180)}A${r} ${r} 0 1 ${sweep} ${point(from)}Z`;
  return `M${point(from)}A${r} ${r} 0 ${Math.abs(turn) > 180 ? 1 : 0} ${sweep} ${point(to)}`;
}

// Widths in em of B612's digits (0.65, measured) and of the rest by groups, for breaking lines and for hit areas.
function characterWidth(character: string, bold: boolean): number {
  if (/[0-9]/.test(character)) return 0.65;
  if (/[ \u00a0.,:;'’!|iIlj()]/.test(character)) return 0.33;
  return (/[mwMW%]/.test(character) ? 0.87 : /[A-Z±]/.test(character) ? 0.68 : 0.55) * (bold ? 1.05 : 1);
}
/** Width of a line of text, as near as breaking needs it. */
export const textWidth = (text: string, size: number, bold: boolean): number =>
  [...text].reduce((sum, character) => sum + characterWidth(character, bold), 0) * size;

/** Lines no wider than `width`, broken at spaces; a word that is wider stands alone. 0: one line. */
export function lines(text: string, width: number, size: number, bold: boolean): readonly string[] {
  if (!(width > 0)) return [text];
  const out: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && textWidth(longer, size, bold) > width) {
      out.push(line);
      line = word;
    } else line = longer;
  }
  return [...out, line];
}

export interface Span {
  readonly text: string;
  /** In the font size of the line. */
  readonly size: number;
  /** Down from where the piece before it stood, in mm. */
  readonly down: number;
}
/** Pieces of one line: numerator and denominator at 62 %, the numerator raised. */
export function spans(text: string, size: number): readonly Span[] {
  let at = 0;
  const to = (y: number) => {
    const down = y - at;
    at = y;
    return down;
  };
  return pieces(text).flatMap((piece) =>
    piece.kind === 'text'
      ? [{ text: piece.text, size, down: to(0) }]
      : [
          { text: piece.upper, size: 0.62 * size, down: to(-0.34 * size) },
          { text: '/', size, down: to(0) },
          { text: piece.lower, size: 0.62 * size, down: to(0.04 * size) },
        ]);
}
export const lineStep = (size: number): number => lineHeight * size;

/** Size of a text at this scale, in mm: its own, or 14 px where that would be smaller. */
export const legible = (size: number, scale: number): number => (scale > 0 ? Math.max(size, leastText / scale) : size);

const around = (points: readonly (readonly number[])[]): Box => {
  const xs = points.map(([x = 0]) => x);
  const ys = points.map(([, y = 0]) => y);
  const x = Math.min(...xs);
  const y = Math.min(...ys);
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
};

function arcBox(arc: ArcItem): Box {
  const ends = [onArc(arc.centre, arc.radius, arc.from), onArc(arc.centre, arc.radius, arc.to)];
  const low = Math.min(arc.from, arc.to);
  const high = Math.max(arc.from, arc.to);
  const quarters = [];
  for (let at = Math.ceil(low / 90) * 90; at <= high; at += 90) quarters.push(onArc(arc.centre, arc.radius, at));
  return around([...ends, ...quarters]);
}

function textBox(text: TextItem): Box {
  const broken = lines(text.text, text.width ?? 0, text.size, text.bold);
  const width = Math.max(...broken.map((line) => textWidth(line, text.size, text.bold)));
  const [x = 0, y = 0] = text.at;
  const left = text.anchor === 'start' ? x : text.anchor === 'middle' ? x - width / 2 : x - width;
  return { x: left, y: y - 0.8 * text.size, width, height: text.size + (broken.length - 1) * lineStep(text.size) };
}

export function boxOf(item: Item): Box {
  switch (item.item) {
    case 'path': return around(item.points);
    case 'arc': return arcBox(item);
    case 'text': return textBox(item);
    case 'code': return { x: item.at[0] ?? 0, y: item.at[1] ?? 0, width: item.side, height: item.side };
  }
}
const idOf = (item: Item): string => (item.item === 'code' ? '' : (item.id ?? ''));

/** Box of everything with this id; where nothing has it, of what belongs to it ("rotor-4" has "rotor-4-half-b"). */
export function boxOfId(list: DisplayList, id: string): Box | undefined {
  const exact = list.items.filter((item) => idOf(item) === id);
  const boxes = (exact.length > 0 ? exact : list.items.filter((item) => belongs(idOf(item), id))).map(boxOf);
  if (boxes.length === 0) return undefined;
  return around(boxes.flatMap((b) => [[b.x, b.y], [b.x + b.width, b.y + b.height]]));
}
const belongs = (id: string, to: string): boolean => id === to || id.startsWith(`${to}-`);

/** Grown about its middle to at least this many millimetres each way, kept inside the picture where it fits. */
export function grown(box: Box, least: number, width: number, height: number): Box {
  const side = (at: number, size: number, room: number): [number, number] => {
    const wanted = Math.max(size, least);
    const from = at - (wanted - size) / 2;
    return [wanted > room ? from : Math.min(Math.max(from, 0), room - wanted), wanted];
  };
  const [x, w] = side(box.x, box.width, width);
  const [y, h] = side(box.y, box.height, height);
  return { x, y, width: w, height: h };
}

export const isChosen = (item: Item, chosen: readonly string[]): boolean => {
  const id = idOf(item);
  return id !== '' && chosen.some((c) => belongs(id, c));
};

const hatches: readonly Hatch[] = ['cut', 'cut_next', 'renew'];
export const hatchOf = (item: Item): Hatch | undefined =>
  item.item === 'path' || item.item === 'arc' ? hatches.find((h) => h === item.fill) : undefined;

/** Which hatches the list needs, in ink and in blue. */
export function hatchesOf(list: DisplayList, chosen: readonly string[]): readonly { hatch: Hatch; blue: boolean }[] {
  const found = new Map<string, { hatch: Hatch; blue: boolean }>();
  for (const item of list.items) {
    const hatch = hatchOf(item);
    const blue = isChosen(item, chosen) || ('ink' in item && item.ink === 'next');
    if (hatch) found.set(`${hatch}${blue}`, { hatch, blue });
  }
  return [...found.values()];
}

/** Turn of a pattern of upright lines, and the pitch in screen pixels: cut 45° and 135°, to be renewed 60° and closer. */
export const hatchLook: Readonly<Record<Hatch, { turn: number; pitch: number; weight: number }>> = {
  cut: { turn: 45, pitch: 7, weight: 1 },
  cut_next: { turn: -45, pitch: 7, weight: 1 },
  renew: { turn: 30, pitch: 5.4, weight: 1.3 },
};

/** A chosen disc with its number in it: filled, as a chosen key is. Its text then stands on the fill. */
export function discs(list: DisplayList, chosen: readonly string[]): readonly ArcItem[] {
  return list.items.filter((item): item is ArcItem =>
    item.item === 'arc' && ['sheet', 'none'].includes(item.fill) && Math.abs(item.to - item.from) >= 360 && isChosen(item, chosen) &&
    list.items.some((text) => text.item === 'text' && text.size > 0.4 * item.radius && within(text.at, item)));
}
const within = ([x = 0, y = 0]: readonly number[], { centre: [cx = 0, cy = 0], radius }: ArcItem): boolean =>
  Math.hypot(x - cx, y - cy) < radius;
export const onDisc = (text: TextItem, filled: readonly ArcItem[]): boolean => filled.some((disc) => within(text.at, disc));

/** Classes of an item: stroke-*, fill-*, ink-*, as parts/picture.css has them. */
export function classOf(item: PathItem | ArcItem, chosen: boolean): string {
  const ink = chosen && item.ink !== 'sheet' ? 'next' : item.ink;
  const fill = chosen && ['solid', 'ink', 'tone'].includes(item.fill) ? (item.fill === 'tone' ? 'soft' : 'next') : item.fill;
  return `stroke-${item.stroke} fill-${fill} ink-${ink}`;
}
