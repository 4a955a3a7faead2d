import { describe, expect, test } from 'vitest';
import {
  alive, empty, figure, fromReference, inOtherUnit, isEmpty, keyOf, lowers, press, referenceIn, shown, text,
  type Key, type Typed, type Wanted,
} from './keypad';
import { readFigure } from './units';

const length: Wanted = { kind: 'length' };
const ring: Wanted = { kind: 'length', reference: { value: 3.937, unit: 'in' } };
const every: readonly Key[] = ['0', '1', '2', '3', '4', '5', '6', '7', '8', '9', '.', '±', 'fraction', 'thou',
  ...lowers.map((l) => `/${l}` as const)];
const keys = (line: string): Key[] => line.split(' ') as Key[];
const typed = (line: string, unit = 'in', wanted = length): Typed =>
  keys(line).reduce((state, key) => press(state, key, wanted), empty(unit));

describe('decimals', () => {
  test.each([
    ['3 . 9 3 6 5', '3.9365 in'],
    ['3 . 9 3 6 0', '3.9360 in'],
    ['. 5', '0.5 in'],
    ['0 5', '5 in'],
    ['0', '0 in'],
    ['1 . 2 . 3', '1.23 in'],
  ])('%s is %s', (line, kept) => expect(text(typed(line), length)).toBe(kept));
  test('a point alone or at the end is not a figure yet', () => {
    expect(text(empty('in'), length)).toBeUndefined();
    expect(text(typed('3 .'), length)).toBeUndefined();
  });
  test('a degree sign stands at its figure, every other unit after a space', () => {
    expect(text(typed('5', '°', { kind: 'angle' }), { kind: 'angle' })).toBe('5°');
    expect(text(typed('5', '°F', { kind: 'temperature' }), { kind: 'temperature' })).toBe('5 °F');
  });
  test('no more than twelve digits', () => {
    const full = typed('1 2 3 4 5 6 7 8 9 0 1 2');
    expect(alive(full, '3', length)).toBe(false);
    expect(alive(full, '.', length)).toBe(true);
  });
});

describe('fractions', () => {
  test.each([
    ['4 fraction 5 /8', '4 5/8 in'],
    ['4 fraction 5 fraction 8', '4 5/8 in'],
    ['fraction 5 /64', '5/64 in'],
    ['0 fraction 1 /2', '1/2 in'],
    ['1 2 fraction 6 3 /64', '12 63/64 in'],
    ['2 fraction 1 fraction 1 6', '2 1/16 in'],
    ['2 fraction 1 fraction 3 2', '2 1/32 in'],
    ['2 fraction 1 fraction 6 4', '2 1/64 in'],
  ])('%s is %s', (line, kept) => expect(text(typed(line), length)).toBe(kept));
  test('while a number of it is missing nothing can be kept', () => {
    for (const line of ['4 fraction', '4 fraction 5', '4 fraction 5 fraction', '4 fraction 5 fraction 1'])
      expect(text(typed(line), length)).toBeUndefined();
  });
  test('only halves to sixty-fourths, and less than one', () => {
    for (const lower of lowers)
      for (let upper = 1; upper < 64; upper++) {
        const before = typed(`fraction ${String(upper).split('').join(' ')}`);
        expect(alive(before, `/${lower}`, length)).toBe(upper < Number(lower));
      }
    expect(alive(typed('fraction 5 fraction'), '3', length)).toBe(true);
    expect(alive(typed('fraction 5 fraction'), '2', length)).toBe(false);
    expect(alive(typed('fraction 5 fraction'), '5', length)).toBe(false);
    expect(alive(typed('fraction 6'), '4', length)).toBe(false);
    expect(alive(typed('fraction'), '0', length)).toBe(false);
  });
  test('not behind a point, not in millimetres, not of a count', () => {
    expect(alive(typed('4 . 5'), 'fraction', length)).toBe(false);
    expect(alive(typed('4', 'mm'), 'fraction', length)).toBe(false);
    expect(alive(typed('4', 'in'), 'fraction', { kind: 'count' })).toBe(false);
  });
});

describe('thou', () => {
  test.each([
    ['5 thou', '0.005 in'],
    ['5 8 thou', '0.058 in'],
    ['1 2 5 thou', '0.125 in'],
    ['5 thou 5', '0.0055 in'],
  ])('%s is %s', (line, kept) => expect(text(typed(line), length)).toBe(kept));
  test('dead where it would say nothing', () => {
    for (const [line, unit] of [['5', 'mm'], ['1 2 3 4', 'in'], ['5 .', 'in'], ['5 thou', 'in'], ['5 fraction', 'in']] as const)
      expect(alive(typed(line, unit), 'thou', length)).toBe(false);
    expect(alive(empty('in'), 'thou', length)).toBe(false);
  });
});

describe('plus or minus', () => {
  test('a difference from the ring, over and under, then a figure again', () => {
    const over = typed('± . 0 0 0 5', 'in', ring);
    expect(text(over, ring)).toBe('3.9375 in');
    const under = press(over, '±', ring);
    expect(text(under, ring)).toBe('3.9365 in');
    expect(shown(under).lead).toBe('−0.0005');
    expect(fromReference(under, ring)).toBe('−0.0005');
    expect(text(press(under, '±', ring), ring)).toBe('0.0005 in');
  });
  test('thou of difference', () => expect(text(typed('5 thou ± ±', 'in', ring), ring)).toBe('3.932 in'));
  test('a ring marked in inches serves a field in millimetres, since that is exact', () => {
    expect(referenceIn(ring, 'mm')).toBe('99.9998');
    expect(text(typed('± ± . 0 1', 'mm', ring), ring)).toBe('99.9898 mm');
  });
  test('a ring marked in millimetres that does not come out even in inches serves none', () => {
    const odd: Wanted = { kind: 'length', reference: { value: 100, unit: 'mm' } };
    expect(referenceIn(odd, 'in')).toBeUndefined();
    expect(alive(empty('in'), '±', odd)).toBe(false);
  });
  test('how far from the ring a typed figure lies', () => {
    expect(fromReference(typed('3 . 9 3 7 2', 'in', ring), ring)).toBe('+0.0002');
    expect(fromReference(typed('3 . 9 3 6 5'), length)).toBeUndefined();
  });
  test('the tail of a binary fraction is not shown', () =>
    expect(referenceIn({ kind: 'length', reference: { value: 0.1 + 0.2, unit: 'in' } }, 'in')).toBe('0.3'));
  test('a sign only where there is a below nought', () => {
    expect(text(typed('± 4', '°F', { kind: 'temperature' }), { kind: 'temperature' })).toBe('-4 °F');
    expect(text(typed('± 0', '°F', { kind: 'temperature' }), { kind: 'temperature' })).toBe('0 °F');
    expect(alive(empty('in'), '±', length)).toBe(false);
    expect(alive(empty('lbf'), '±', { kind: 'force' })).toBe(false);
  });
});

describe('counts, units, keyboard', () => {
  const count: Wanted = { kind: 'count' };
  test('a count is digits and has no unit', () => {
    expect(text(typed('1 2', '', count), count)).toBe('12');
    for (const key of ['.', '±', 'fraction', 'thou'] as const) expect(alive(typed('1', '', count), key, count)).toBe(false);
  });
  test('the unit switch leaves the digits alone, and undo takes it back', () => {
    const inches = typed('3 . 9');
    const metric = inOtherUnit(inches, 'mm');
    expect(text(metric, length)).toBe('3.9 mm');
    expect(press(metric, 'undo', length)).toBe(inches);
    expect(inOtherUnit(inches, 'in')).toBe(inches);
  });
  test('keys of a keyboard', () => {
    expect(['7', '.', ',', '-', '/', ' ', 'Backspace', 'a', 'Enter'].map((k) => keyOf(k, empty('in')))).toEqual(
      ['7', '.', '.', '±', 'fraction', 'fraction', 'undo', undefined, undefined]);
  });
});

// Every sequence of up to four keys: undo takes back exactly one key, and what can be kept can be read.
test('all sequences of four keys', () => {
  let seen = 0;
  const walk = (state: Typed, wanted: Wanted, depth: number) => {
    const kept = figure(state, wanted);
    if (kept !== undefined) {
      if (readFigure(kept) === undefined) throw new Error(`kept but cannot be read: ${kept}`);
      if (!text(state, wanted)?.endsWith(' in')) throw new Error(`kept without its unit: ${kept}`);
      if (isEmpty(state)) throw new Error('nothing typed, something kept');
    }
    if (depth === 0) return;
    for (const key of every) {
      const next = press(state, key, wanted);
      if (next === state) continue;
      seen++;
      if (press(next, 'undo', wanted) !== state) throw new Error(`undo of ${key} is not the state before`);
      walk(next, wanted, depth - 1);
    }
  };
  walk(empty('in'), length, 4);
  walk(empty('in'), ring, 4);
  expect(seen).toBeGreaterThan(20_000);
  expect(press(empty('in'), 'undo', length)).toEqual(empty('in'));
});
