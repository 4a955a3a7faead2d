// strip.ts: where the strip's drawing, rails and leaders stand, in px, from what the server says in mm.
import { leader, placeCells, type RailCell } from './rails';

export interface Station {
  readonly index: number;
  readonly kind: string;
  /** none: a tap on the part goes to its neighbour, by the server's word. */
  readonly rail: 'top' | 'bottom' | 'none';
  readonly from: number;
  readonly to: number;
}
export interface PlacedCell {
  readonly index: number;
  readonly left: number;
  readonly width: number;
  /** Points from the part to the cell. */
  readonly leader: readonly (readonly [number, number])[];
}
export interface StripLayout {
  readonly top: readonly PlacedCell[];
  readonly bottom: readonly PlacedCell[];
  readonly topHeight: number;
  readonly bottomHeight: number;
  /** Upper edge of the drawing and of the lower rail. */
  readonly drawingTop: number;
  readonly railTop: number;
  readonly height: number;
}

export const kTopCell = 50;
export const kBottomCell = 73;
const kTopGap = 14;
const kBottomGap = 18;

/** Width of a cell: a rotor has more to say. */
export function cellWidth(kind: string, screen: number): number {
  if (kind === 'rotor') return screen >= 1280 ? 74 : 54;
  return ['nut', 'hanger', 'pulley'].includes(kind) ? 51 : 48;
}

export const kLeastCell = 48;

/** The cells made narrower together, down to the least, where they are too wide for the room. */
export function fitted(cells: readonly RailCell[], room: number): RailCell[] {
  const spare = cells.reduce((sum, cell) => sum + cell.width - kLeastCell, 0);
  const over = cells.reduce((sum, cell) => sum + cell.width, 0) - room;
  if (over <= 0 || spare <= 0) return [...cells];
  const keep = Math.max(0, 1 - over / spare);
  return cells.map((cell) => ({ ...cell, width: kLeastCell + (cell.width - kLeastCell) * keep }));
}

/**
 * Two rails with the drawing between them, or null where the cells do not fit at their least width.
 * `scale`: px a mm. `axis`: of the shaft in the drawing, px from its upper edge.
 */
export function stripLayout(stations: readonly Station[], width: number, scale: number, drawing: number, axis: number): StripLayout | null {
  const rail = (which: 'top' | 'bottom') => stations.filter((station) => station.rail === which);
  const cells = (which: readonly Station[]): RailCell[] =>
    fitted(which.map((station) => ({ wanted: (scale * (station.from + station.to)) / 2, width: cellWidth(station.kind, width) })), width);
  const top = rail('top'), bottom = rail('bottom');
  const topCells = cells(top), bottomCells = cells(bottom);
  const topLefts = placeCells(topCells, width), bottomLefts = placeCells(bottomCells, width);
  if (!topLefts || !bottomLefts) return null;
  const topHeight = top.length ? kTopCell : 0;
  const bottomHeight = bottom.length ? kBottomCell : 0;
  const drawingTop = topHeight + (topHeight ? kTopGap : 0);
  const railTop = drawingTop + drawing + (bottomHeight ? kBottomGap : 0);
  const place = (which: readonly Station[], sizes: readonly RailCell[], lefts: readonly number[], from: (s: Station) => number, to: number) =>
    which.map((station, i): PlacedCell => ({
      index: station.index, left: lefts[i]!, width: sizes[i]!.width,
      leader: leader(sizes[i]!.wanted, lefts[i]! + sizes[i]!.width / 2, from(station), to, 8),
    }));
  return {
    top: place(top, topCells, topLefts, () => drawingTop + axis, topHeight),
    bottom: place(bottom, bottomCells, bottomLefts, (station) => drawingTop + (station.kind === 'rotor' ? drawing - 2 : axis), railTop),
    topHeight, bottomHeight, drawingTop, railTop, height: railTop + bottomHeight,
  };
}

/** The part at this place of the drawing: the one it lies in, else the nearest. mm. */
export function partAt<Part extends { readonly from: number; readonly to: number }>(parts: readonly Part[], x: number): Part | undefined {
  const away = (part: Part) => Math.max(part.from - x, x - part.to, 0);
  return parts.reduce<Part | undefined>((best, part) => (best === undefined || away(part) < away(best) ? part : best), undefined);
}

interface AxisLike {
  readonly item: string;
  readonly stroke?: string;
  readonly points?: readonly (readonly number[])[];
}
/** Height of the shaft's axis in the drawing, mm: its axis line, else the middle. */
export function axisOf(list: { readonly height: number; readonly items: readonly AxisLike[] }): number {
  const line = list.items.find((item) => item.item === 'path' && item.stroke === 'axis' && item.points?.length === 2
    && item.points[0]?.[1] === item.points[1]?.[1]);
  return line?.points?.[0]?.[1] ?? list.height / 2;
}
