import { expect, test } from 'vitest';
import type { DisplayList } from './picture';
import { figureOf, heightAt, readPlot, readingsAt, withoutHead, written } from './plot_read';

// A straight line y = x/100 over 0 to 1000, drawn on 100 mm by 50 mm.
const figure = (id: string, text: string, x: number, y: number) =>
  ({ item: 'text', at: [x, y], text, size: 3.6, bold: false, anchor: 'middle', ink: 'ink', id }) as DisplayList['items'][number];
const path = (id: string, ...points: number[][]) =>
  ({ item: 'path', points, closed: false, stroke: 'wide', fill: 'none', ink: 'ink', id }) as DisplayList['items'][number];
const plot: DisplayList = { width: 120, height: 80, items: [
  path('axis-x', [10, 60], [110, 60]), path('axis-y', [10, 10], [10, 60]),
  figure('figure-x', '0', 10, 65), figure('figure-x', '500', 60, 65), figure('figure-x', '1\u00a0000', 110, 65),
  figure('figure-y', '0', 8, 60 + 0.36 * 3.6), figure('figure-y', '10', 8, 10 + 0.36 * 3.6),
  figure('words-x', 'shaft speed, /min', 110, 70), figure('words-y', 'lbf', 0, 70),
  path('curve-a', [10, 60], [60, 35]), path('curve-a', [60, 35], [110, 10]), figure('curve-a', 'Facing, Thirds', 80, 20),
  path('curve-b', [60, 60], [110, 60]),
] };

test('figures as a scale writes them', () => {
  expect([figureOf('1\u00a0000'), figureOf('\u22120.5'), figureOf('lbf'), figureOf('')]).toEqual([1000, -0.5, undefined, undefined]);
  expect([written(1234567.8, 1), written(-0.04, 1), written(-2, 0)]).toEqual(['1\u00a0234\u00a0567.8', '0.0', '\u22122']);
});

test('a place along is read off every curve that reaches it', () => {
  const read = readPlot(plot)!;
  expect([read.left, read.right, read.top, read.bottom]).toEqual([10, 110, 10, 60]);
  const { place, readings } = readingsAt(read, 35);
  expect(place).toBe('250');
  expect(readings.map((one) => [one.name, one.value])).toEqual([['Facing, Thirds', '2.50']]);
  expect(readingsAt(read, 85).readings.map((one) => [one.name, one.value])).toEqual([['Facing, Thirds', '7.50'], ['b', '0.00']]);
});

test('where a curve does not reach there is no reading', () => {
  const read = readPlot(plot)!;
  expect(heightAt(read.curves[1]!, 30)).toBeUndefined();
  expect(readPlot({ width: 10, height: 10, items: [] })).toBeUndefined();
});

test('without its head the plot moves up and reads the same', () => {
  const headed = { ...plot, items: [...plot.items, figure('', 'Load', 0, 4)] };
  const bare = withoutHead(headed, ['Load']);
  expect(bare.items.some((item) => item.item === 'text' && item.text === 'Load')).toBe(false);
  expect(bare.height).toBe(80 - 7);
  expect(readPlot(bare)!.top).toBe(3);
  expect(readingsAt(readPlot(bare)!, 35).readings.map((one) => one.value)).toEqual(['2.50']);
  expect(withoutHead(plot, ['Load'])).toBe(plot);
});
