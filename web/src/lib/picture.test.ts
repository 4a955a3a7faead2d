import { describe, expect, test } from 'vitest';
import { arcData, boxOf, discs, onDisc, boxOfId, classOf, grown, hatchesOf, isChosen, legible, lines, onArc, pathData, spans, textWidth,
  type ArcItem, type DisplayList, type PathItem, type TextItem } from './picture';

const path = (more: Partial<PathItem> = {}): PathItem => ({
  item: 'path', points: [[0, 0], [10, 0], [10, 4]], closed: true, stroke: 'wide', fill: 'none', ink: 'ink', ...more });
const arc = (more: Partial<ArcItem> = {}): ArcItem => ({
  item: 'arc', centre: [10, 10], radius: 5, from: 0, to: 360, stroke: 'wide', fill: 'none', ink: 'ink', ...more });
const text = (more: Partial<TextItem> = {}): TextItem => ({
  item: 'text', at: [20, 20], text: 'B', size: 4, bold: true, anchor: 'middle', ink: 'ink', ...more });
const list = (...items: DisplayList['items']): DisplayList => ({ width: 80, height: 60, items });

test('a path is its points, closed or not', () => {
  expect(pathData(path())).toBe('M0 0L10 0L10 4Z');
  expect(pathData(path({ closed: false }))).toBe('M0 0L10 0L10 4');
});

describe('arcs run clockwise from 12 o’clock', () => {
  test('quarters of a circle', () => {
    expect(onArc([10, 10], 5, 0).map(Math.round)).toEqual([10, 5]);
    expect(onArc([10, 10], 5, 90).map(Math.round)).toEqual([15, 10]);
    expect(onArc([10, 10], 5, 180).map(Math.round)).toEqual([10, 15]);
    expect(onArc([10, 10], 5, 270).map(Math.round)).toEqual([5, 10]);
  });
  test('flag bits: far way round above half a turn, sweep by the sign', () => {
    expect(arcData(arc({ from: 0, to: 90 }))).toBe('M10 5A5 5 0 0 1 15 10');
    expect(arcData(arc({ from: 0, to: 270 }))).toBe('M10 5A5 5 0 1 1 5 10');
    expect(arcData(arc({ from: 90, to: 0 }))).toBe('M15 10A5 5 0 0 0 10 5');
  });
  test('a full circle is drawn whole', () =>
    expect(arcData(arc())).toBe('M10 5A5 5 0 1 1 10 15A5 5 0 1 1 10 5Z'));
});

describe('boxes', () => {
  test('of a path, a circle and a piece of it', () => {
    expect(boxOf(path())).toEqual({ x: 0, y: 0, width: 10, height: 4 });
    expect(boxOf(arc())).toEqual({ x: 5, y: 5, width: 10, height: 10 });
    const quarter = boxOf(arc({ from: 0, to: 90 }));
    expect(quarter.x).toBeCloseTo(10, 9);
    expect(quarter.width).toBeCloseTo(5, 9);
    const over = boxOf(arc({ from: 315, to: 405 }));
    expect(over.y).toBeCloseTo(5, 9);
  });
  test('of a text lies by its anchor', () => {
    const middle = boxOf(text());
    expect(middle.x + middle.width / 2).toBeCloseTo(20, 9);
    expect(boxOf(text({ anchor: 'start' })).x).toBe(20);
    const end = boxOf(text({ anchor: 'end' }));
    expect(end.x + end.width).toBeCloseTo(20, 9);
  });
  test('of an id is its own, else that of its parts, and nothing that only begins alike', () => {
    const l = list(path({ id: 'rotor-1-half-a' }), arc({ id: 'rotor-1-half-b' }), path({ id: 'rotor-10', points: [[50, 50], [60, 55]] }));
    expect(boxOfId(l, 'rotor-1')).toEqual({ x: 0, y: 0, width: 15, height: 15 });
    expect(boxOfId(l, 'rotor-1-half-b')).toEqual({ x: 5, y: 5, width: 10, height: 10 });
    expect(boxOfId(l, 'rotor-2')).toBeUndefined();
  });
  test('a hit area is at least so large, about the same middle, inside the picture', () => {
    expect(grown({ x: 20, y: 20, width: 4, height: 20 }, 10, 80, 60)).toEqual({ x: 17, y: 20, width: 10, height: 20 });
    expect(grown({ x: 0, y: 58, width: 2, height: 2 }, 10, 80, 60)).toEqual({ x: 0, y: 50, width: 10, height: 10 });
    expect(grown({ x: 0, y: 0, width: 2, height: 2 }, 10, 80, 6)).toEqual({ x: 0, y: -4, width: 10, height: 10 });
  });
});

describe('text', () => {
  // Source: widths measured in B612 Regular and Bold: every digit is 0.65 em in both. Tolerance: none.
  test('digits are as wide bold as regular', () => {
    expect(textWidth('3936', 10, false)).toBeCloseTo(26, 9);
    expect(textWidth('3936', 10, true)).toBeCloseTo(26, 9);
  });
  test('lines break at spaces and keep every word', () => {
    const broken = lines('Slide rotors 3 and 4 off at end A', 30, 4, false);
    expect(broken.length).toBeGreaterThan(1);
    expect(broken.join(' ')).toBe('Slide rotors 3 and 4 off at end A');
    for (const line of broken) expect(textWidth(line, 4, false)).toBeLessThanOrEqual(30);
    expect(lines('one line', 0, 4, false)).toEqual(['one line']);
    expect(lines('unbreakablelongword', 5, 4, false)).toEqual(['unbreakablelongword']);
  });
  test('a fraction is drawn at 62 % and the line goes on at its height', () => {
    const drawn = spans('4 5/8 in', 10);
    expect(drawn.map((s) => s.text)).toEqual(['4', '5', '/', '8', '\u00a0', 'in']);
    expect(drawn[1]?.size).toBeCloseTo(6.2, 9);
    expect(drawn.reduce((at, s) => at + s.down, 0)).toBeCloseTo(0, 9);
  });
  test('nothing is smaller than 14 px', () => {
    expect(legible(3.5, 4.6)).toBe(3.5);
    expect(legible(3.5, 2) * 2).toBe(14);
    expect(legible(3.5, 0)).toBe(3.5);
  });
});

describe('look', () => {
  test('what is chosen is blue, seams stay the ground', () => {
    expect(classOf(path({ fill: 'solid' }), false)).toBe('stroke-wide fill-solid ink-ink');
    expect(classOf(path({ fill: 'solid' }), true)).toBe('stroke-wide fill-next ink-next');
    expect(classOf(path({ fill: 'solid', ink: 'sheet' }), true)).toBe('stroke-wide fill-next ink-sheet');
    expect(classOf(path({ fill: 'sheet' }), true)).toBe('stroke-wide fill-sheet ink-next');
  });
  test('chosen by its id or by what it belongs to', () => {
    expect(isChosen(path({ id: 'plane-A' }), ['plane-A'])).toBe(true);
    expect(isChosen(path({ id: 'plane-A-label' }), ['plane-A'])).toBe(true);
    expect(isChosen(path(), [''])).toBe(false);
  });
  test('a chosen disc with its number is filled, a circle around something else is not', () => {
    const disc = arc({ id: 'flat-1', fill: 'sheet' });
    const number = text({ id: 'flat-1', at: [10, 12] });
    const l = list(disc, number, arc({ id: 'rim', radius: 30, fill: 'sheet' }), arc({ id: 'flat-2', centre: [60, 10], fill: 'sheet' }));
    expect(discs(l, ['flat-1', 'rim', 'flat-2'])).toEqual([disc]);
    expect(onDisc(number, [disc])).toBe(true);
    expect(onDisc(text({ at: [20, 12] }), [disc])).toBe(false);
    expect(discs(l, [])).toEqual([]);
  });
  test('only the hatches that are used are made, each once a colour', () =>
    expect(hatchesOf(list(path({ fill: 'cut' }), path({ fill: 'cut', id: 'x' }), path({ fill: 'cut' })), ['x'])).toEqual([
      { hatch: 'cut', blue: false }, { hatch: 'cut', blue: true }]));
});
