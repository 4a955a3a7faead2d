import { describe, expect, test } from 'vitest';
import { decimal, difference, ending, inUnit, readFigure, shownIn, sum } from './units';

const exact = (over: bigint, under = 1n) => ({ over, under });
const one = (from: string, to: string) => {
  const value = inUnit(exact(1n), from, to);
  return value ? decimal(value, 16) : undefined;
};

describe('factors', () => {
  // Source: NIST SP 811 (2008), appendix B.8: the factors printed in bold are exact.
  // Tolerance: none, the printed figure is the exact one, padded with noughts.
  test.each([
    ['in', 'mm', '25.4000000000000000'],
    ['ft', 'm', '0.3048000000000000'],
    ['lb', 'kg', '0.4535923700000000'],
    ['lbf', 'N', '4.4482216152605000'],
    ['thou', 'mm', '0.0254000000000000'],
    ['in/s', 'mm/s', '25.4000000000000000'],
  ])('1 %s is so many %s', (from, to, value) => expect(one(from, to)).toBe(value));

  // Source: NIST SP 811 (2008), appendix B.8: lbf·ft 1.355 818 E+00 N·m, lbf·in 1.129 848 E-01 N·m, psi 6.894 757 E+03 Pa.
  // Tolerance: the seven digits printed there.
  test.each([
    ['ft·lb', 'N·m', 6, '1.355818'],
    ['in·lb', 'N·m', 7, '0.1129848'],
    ['psi', 'MPa', 9, '0.006894757'],
  ])('1 %s in %s', (from, to, places, value) => {
    const found = inUnit(exact(1n), from, to);
    expect(found && decimal(found, places)).toBe(value);
  });

  // Source: SI brochure, 9th edition, 2.3.1; freezing and boiling point of water at one atmosphere, common practice.
  // Tolerance: none.
  test.each([
    ['°F', '°C', 32n, '0'],
    ['°F', '°C', 212n, '100'],
    ['°F', '°C', -40n, '−40'],
    ['°C', '°F', 20n, '68'],
  ])('%s to %s at %s', (from, to, at, value) => {
    const found = inUnit(exact(at), from, to);
    expect(found && ending(found)).toBe(value);
  });

  test('there and back is the same figure', () => {
    for (const [a, b] of [['in', 'mm'], ['lbf', 'N'], ['ft·lb', 'N·m'], ['°F', '°C'], ['psi', 'bar'], ['lb', 'kg']] as const) {
      const there = inUnit(exact(39_365n, 10_000n), a, b);
      const back = there && inUnit(there, b, a);
      expect(back && back.over * 10_000n === back.under * 39_365n).toBe(true);
    }
  });
  test('kinds do not mix, and no unit is guessed', () => {
    expect(inUnit(exact(1n), 'in', 'N')).toBeUndefined();
    expect(inUnit(exact(1n), 'in', 'cubit')).toBeUndefined();
    expect(shownIn('1', 'count', 'mm')).toBeUndefined();
  });
});

describe('shown in the other unit', () => {
  // The last place shown is no coarser than the last digit typed: 0.0001 in is 0.00254 mm, so three places.
  test.each([
    ['3.9365', 'in', 'mm', '99.987'],
    ['65.95', 'in', 'mm', '1675.1'],
    ['0.058', 'in', 'mm', '1.47'],
    ['4 5/8', 'in', 'mm', '117.5'],
    ['5/64', 'in', 'mm', '2.0'],
    ['225', 'ft·lb', 'N·m', '305'],
    ['45', 'lbf', 'N', '200'],
    ['68', '°F', '°C', '20.0'],
    ['99.987', 'mm', 'in', '3.93650'],
    ['-40', '°C', '°F', '−40'],
  ])('%s %s in %s', (text, from, to, shown) => expect(shownIn(text, from, to)).toBe(shown));
  test('half-typed figures show nothing', () => {
    for (const text of ['', '.', '3.', '4 5/', '1/0', '3,9', '1e3', '4  5/8']) expect(readFigure(text)).toBeUndefined();
  });
});

describe('sums as written', () => {
  test('ring and difference', () => {
    expect(sum('3.9370', '−0.0005')).toBe('3.9365');
    expect(sum('3.937', '-0.00050')).toBe('3.93650');
    expect(difference('3.9365', '3.9370')).toBe('−0.0005');
    expect(difference('3.9370', '3.9370')).toBe('0.0000');
    expect(sum('0.1', '0.2')).toBe('0.3');
    expect(difference('−1', '−3')).toBe('2');
  });
  test('fractions are not added', () => expect(sum('1 1/2', '0.5')).toBeUndefined());
  test('decimals round half away from nought', () => {
    expect(decimal(exact(5n, 1000n), 2)).toBe('0.01');
    expect(decimal(exact(-5n, 1000n), 2)).toBe('−0.01');
    expect(decimal(exact(-1n, 1000n), 2)).toBe('0.00');
    expect(decimal(exact(1n, 3n), 3)).toBe('0.333');
    expect(ending(exact(1n, 3n))).toBeUndefined();
    expect(ending(exact(999_998n, 10_000n))).toBe('99.9998');
  });
});
