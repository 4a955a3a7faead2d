// plot_read.ts: a place along a plot, read off its curves by the figures of its own scales. Pure.
import type { DisplayList, PathItem, TextItem } from './picture';

/** value = from + (at - start) * slope, `at` in mm of the drawing. */
interface Scale {
  readonly start: number;
  readonly from: number;
  readonly slope: number;
  /** Decimals that a reading off the drawing bears: a two hundredth of the scale. */
  readonly decimals: number;
}
export interface PlotCurve {
  readonly name: string;
  readonly pieces: readonly (readonly (readonly number[])[])[];
}
export interface PlotRead {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly x: Scale;
  readonly y: Scale;
  readonly xWords: string;
  readonly yWords: string;
  /** Where the drawing's own 'here' stands, mm. */
  readonly here: number | undefined;
  readonly curves: readonly PlotCurve[];
}
export interface Reading {
  readonly name: string;
  /** mm of the drawing. */
  readonly at: number;
  readonly value: string;
}

const isPath = (item: DisplayList['items'][number]): item is PathItem => item.item === 'path';
const isText = (item: DisplayList['items'][number]): item is TextItem => item.item === 'text';

/** '1 200' and '−0.5' as the scale writes them; undefined for anything else. */
export function figureOf(text: string): number | undefined {
  const plain = text.replace(/[\u00a0\u202f ]/g, '').replace('\u2212', '-');
  return /^-?\d+(\.\d+)?$/.test(plain) ? Number(plain) : undefined;
}

/** By two figures the furthest apart. */
function scaleOf(figures: readonly TextItem[], along: 0 | 1, shift: number): Scale | undefined {
  const at = figures.flatMap((text) => {
    const value = figureOf(text.text);
    return value === undefined ? [] : [{ mm: (text.at[along] ?? 0) - shift * text.size, value }];
  }).sort((a, b) => a.mm - b.mm);
  const first = at[0], last = at.at(-1);
  if (!first || !last || last.mm - first.mm < 1) return undefined;
  const span = Math.abs(last.value - first.value);
  const decimals = span > 0 ? Math.min(6, Math.max(0, Math.ceil(-Math.log10(span / 200)))) : 0;
  return { start: first.mm, from: first.value, slope: (last.value - first.value) / (last.mm - first.mm), decimals };
}

export const valueAt = (scale: Scale, mm: number): number => scale.from + (mm - scale.start) * scale.slope;

/** Thousands apart, minus as the scale has it. */
export function written(value: number, decimals: number): string {
  const [whole = '', part] = Math.abs(value).toFixed(decimals).split('.');
  const digits = whole.replace(/\B(?=(\d{3})+$)/g, '\u00a0') + (part ? `.${part}` : '');
  return value < 0 && Number(value.toFixed(decimals)) !== 0 ? `\u2212${digits}` : digits;
}

/** undefined where the drawing is no plot of two scales. */
export function readPlot(list: DisplayList): PlotRead | undefined {
  const paths = list.items.filter(isPath), texts = list.items.filter(isText);
  const axisX = paths.find((path) => path.id === 'axis-x')?.points, axisY = paths.find((path) => path.id === 'axis-y')?.points;
  const x = scaleOf(texts.filter((text) => text.id === 'figure-x'), 0, 0);
  // A figure of the upright scale stands with its middle at its line, 0.36 of its size above its foot.
  const y = scaleOf(texts.filter((text) => text.id === 'figure-y'), 1, 0.36);
  if (!axisX || !axisY || !x || !y) return undefined;
  const ends = (points: PathItem['points'], along: 0 | 1) => points.map((point) => point[along] ?? 0);
  const words = (id: string) => texts.find((text) => text.id === id)?.text ?? '';
  const here = paths.find((path) => path.id === 'here')?.points[0]?.[0];
  const curves = new Map<string, { name: string; pieces: PathItem['points'][] }>();
  for (const path of paths) {
    if (!path.id?.startsWith('curve-')) continue;
    const curve = curves.get(path.id) ?? { name: words(path.id) || path.id.slice('curve-'.length), pieces: [] };
    curve.pieces.push(path.points);
    curves.set(path.id, curve);
  }
  return {
    left: Math.min(...ends(axisX, 0)), right: Math.max(...ends(axisX, 0)), top: Math.min(...ends(axisY, 1)), bottom: Math.max(...ends(axisY, 1)),
    x, y, xWords: words('words-x'), yWords: words('words-y'), here, curves: [...curves.values()],
  };
}

/** Height of a curve at a place along, mm; undefined where it does not reach. */
export function heightAt(curve: PlotCurve, mm: number): number | undefined {
  for (const piece of curve.pieces) {
    for (let i = 1; i < piece.length; i += 1) {
      const [x0 = 0, y0 = 0] = piece[i - 1] ?? [], [x1 = 0, y1 = 0] = piece[i] ?? [];
      if (mm < Math.min(x0, x1) || mm > Math.max(x0, x1)) continue;
      return x1 === x0 ? y1 : y0 + ((y1 - y0) * (mm - x0)) / (x1 - x0);
    }
  }
  return undefined;
}

/** What stands at a place along: the place itself, and each curve that reaches it. */
export function readingsAt(plot: PlotRead, mm: number): { readonly place: string; readonly readings: readonly Reading[] } {
  const readings = plot.curves.flatMap((curve) => {
    const at = heightAt(curve, mm);
    return at === undefined ? [] : [{ name: curve.name, at, value: written(valueAt(plot.y, at), plot.y.decimals) }];
  });
  return { place: written(valueAt(plot.x, mm), plot.x.decimals), readings };
}

/**
 * The plot without these words at its head, which the page says itself, in lines as wide as the screen: what is left moves up by
 * the room they took.
 */
export function withoutHead(list: DisplayList, words: readonly string[]): DisplayList {
  const head = list.items.filter((item) => isText(item) && words.some((said) => said !== '' && item.text.startsWith(said)));
  const top = list.items.filter(isPath).find((path) => path.id === 'axis-y')?.points.reduce((least, point) => Math.min(least, point[1] ?? 0), Infinity);
  if (head.length === 0) return list;
  // A drawing without scales begins below its head.
  const begins = Math.max(...head.filter(isText).map((text) => text.at[1] ?? 0)) + kBelow;
  const up = Math.max(0, top === undefined ? begins : top - kAbove);
  const moved = (point: readonly number[]): number[] => [point[0] ?? 0, (point[1] ?? 0) - up];
  const items = list.items.filter((item) => !head.includes(item)).map((item): DisplayList['items'][number] => {
    switch (item.item) {
      case 'path': return { ...item, points: item.points.map(moved) };
      case 'arc': return { ...item, centre: moved(item.centre) };
      default: return { ...item, at: moved(item.at) };
    }
  });
  return { ...list, height: list.height - up, items };
}
/** Half a figure of the upright scale stands above its end, mm. */
const kAbove = 3;
/** Below the foot of the last word of a head, mm. */
const kBelow = 1;
