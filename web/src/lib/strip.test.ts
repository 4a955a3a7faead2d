import { describe, expect, it } from 'vitest';
import { axisOf, cellWidth, fitted, stripLayout, type Station, partAt } from './strip';

const station = (index: number, kind: string, at: number, rail: 'top' | 'bottom' = 'bottom'): Station =>
  ({ index, kind, rail, from: at - 1, to: at + 1 });
const nine: Station[] = Array.from({ length: 9 }, (_, i) => [station(2 * i, 'rotor', 20 + 18 * i), station(2 * i + 1, 'spacer', 29 + 18 * i, 'top')]).flat();

describe('stripLayout', () => {
  it('stands spacers above and everything else below, each over its part', () => {
    const layout = stripLayout(nine, 820, 820 / 186, 200, 110)!;
    expect(layout.top).toHaveLength(9);
    expect(layout.bottom).toHaveLength(9);
    const first = layout.bottom[0]!;
    expect(first.left + first.width / 2).toBeCloseTo((20 * 820) / 186, 6);
    expect([layout.drawingTop, layout.railTop, layout.height]).toEqual([64, 282, 355]);
  });
  it('gives up where the cells do not fit', () => {
    expect(stripLayout(nine, 360, 360 / 186, 90, 45)).toBeNull();
  });
  it('never makes a cell smaller than a finger', () => {
    for (const kind of ['nut', 'washer', 'spacer', 'rotor', 'hanger', 'pulley', 'shoulder', 'other'])
      for (const width of [360, 820, 1440]) expect(cellWidth(kind, width)).toBeGreaterThanOrEqual(48);
  });
});

describe('fitted', () => {
  it('makes cells narrower only as far as is needed, and never under a finger', () => {
    const cells = [54, 54, 48].map((width) => ({ wanted: 0, width }));
    expect(fitted(cells, 156)).toEqual(cells);
    expect(fitted(cells, 150).map((cell) => cell.width)).toEqual([51, 51, 48]);
    expect(fitted(cells, 100).map((cell) => cell.width)).toEqual([48, 48, 48]);
  });
});

describe('axisOf', () => {
  it('is the axis line of the drawing, or its middle', () => {
    const line = { item: 'path', stroke: 'axis', points: [[0, 17], [186, 17]] };
    expect(axisOf({ height: 50, items: [{ item: 'text' }, line] })).toBe(17);
    expect(axisOf({ height: 50, items: [] })).toBe(25);
  });
});

describe('partAt', () => {
  const parts = [{ from: 0, to: 10 }, { from: 12, to: 13 }, { from: 20, to: 40 }];
  it('is the part a tap lies in, else the nearest', () => {
    expect(partAt(parts, 5)).toBe(parts[0]);
    expect(partAt(parts, 12.5)).toBe(parts[1]);
    expect(partAt(parts, 11.4)).toBe(parts[1]);
    expect(partAt(parts, 99)).toBe(parts[2]);
    expect(partAt([], 1)).toBeUndefined();
  });
});
