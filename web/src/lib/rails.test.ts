import { describe, expect, it } from 'vitest';
import { inSight, leader, placeCells, widthOf, type RailCell } from './rails';

const cell = (wanted: number, width = 50): RailCell => ({ wanted, width });
const shiftOf = (cells: readonly RailCell[], lefts: readonly number[]) =>
  cells.reduce((sum, c, i) => sum + Math.abs(lefts[i]! + c.width / 2 - c.wanted), 0);

/** The least total shift by trying every whole pixel: slow and plainly right (dynamic programme over positions). */
function leastShift(cells: readonly RailCell[], room: number): number {
  let best = new Array<number>(room + 1).fill(0);
  for (const c of cells) {
    const next = new Array<number>(room + 1).fill(Infinity);
    for (let end = 0; end <= room; ++end) {
      const left = end - c.width;
      const here = left < 0 ? Infinity : best[left]! + Math.abs(left + c.width / 2 - c.wanted);
      next[end] = Math.min(here, end > 0 ? next[end - 1]! : Infinity);
    }
    best = next;
  }
  return best[room]!;
}

describe('placeCells', () => {
  it('leaves cells under their parts where there is room', () => {
    expect(placeCells([cell(30), cell(100), cell(300)], 400)).toEqual([5, 75, 275]);
  });
  it('says so when they do not fit', () => {
    expect(placeCells([cell(10), cell(20), cell(30)], 149)).toBeNull();
    expect(placeCells([cell(10), cell(20), cell(30)], 150)).toEqual([0, 50, 100]);
  });
  it('keeps order and never lays one over another', () => {
    const cells = [cell(100), cell(101), cell(102), cell(390), cell(399)];
    const lefts = placeCells(cells, 400)!;
    lefts.slice(1).forEach((left, i) => expect(left).toBeGreaterThanOrEqual(lefts[i]! + 50));
    expect(lefts[0]).toBeGreaterThanOrEqual(0);
    expect(lefts.at(-1)! + 50).toBeLessThanOrEqual(400);
  });
  it('is the least total shift there is', () => {
    // Source: exhaustive dynamic programme above. Tolerance: 1e-9, sums of halves are exact.
    let seed = 7;
    const random = () => (seed = (seed * 48271) % 2147483647) / 2147483647;
    for (let round = 0; round < 60; ++round) {
      const room = 300 + Math.floor(random() * 100);
      const cells = Array.from({ length: 2 + Math.floor(random() * 5) }, () => Math.floor(random() * room))
        .sort((a, b) => a - b)
        .map((wanted) => cell(wanted, 40));
      const lefts = placeCells(cells, room)!;
      expect(shiftOf(cells, lefts)).toBeCloseTo(leastShift(cells, room), 9);
    }
  });
  it('keeps the gap', () => {
    expect(placeCells([cell(100), cell(100)], 400, 6)).toEqual([47, 103]);
    expect(widthOf([cell(1), cell(2)], 6)).toBe(106);
  });
});

describe('leader', () => {
  it('is straight over its part and bent beside it', () => {
    expect(leader(50, 50, 0, 40)).toEqual([[50, 0], [50, 40]]);
    expect(leader(50, 80, 0, 60, 10)).toEqual([[50, 0], [50, 40], [80, 50], [80, 60]]);
    expect(leader(50, 80, 60, 0, 10)).toEqual([[50, 60], [50, 20], [80, 10], [80, 0]]);
  });
});

describe('inSight', () => {
  const cells = [0, 56, 112, 168].map((left) => ({ left, width: 56 }));
  it('names the first and the last cell whose middle is in sight', () => {
    expect(inSight(cells, 0, 120)).toEqual([0, 1]);
    expect(inSight(cells, 60, 120)).toEqual([1, 2]);
    expect(inSight([], 0, 100)).toBeNull();
  });
});
