import { describe, expect, it } from 'vitest';
import { Touches } from './touches';

describe('two touches at once', () => {
  it('count as none on different keys within 80 ms', () => {
    const touches = new Touches<string>();
    expect(touches.down('a', 1000)).toBe(false);
    expect(touches.down('b', 1080)).toBe(true);
    expect([touches.counts('a', 1100), touches.counts('b', 1110)]).toEqual([false, false]);
  });
  it('count each when they are further apart, or on one key', () => {
    const touches = new Touches<string>();
    touches.down('a', 1000);
    expect(touches.down('b', 1081)).toBe(false);
    expect([touches.counts('a', 1100), touches.counts('b', 1110)]).toEqual([true, true]);
    touches.down('7', 2000);
    expect(touches.down('7', 2040)).toBe(false);
    expect([touches.counts('7', 2010), touches.counts('7', 2050)]).toEqual([true, true]);
  });
  it('do not spoil the next press of the same key', () => {
    const touches = new Touches<string>();
    touches.down('a', 1000);
    touches.down('b', 1010);
    touches.down('a', 1500);
    expect(touches.counts('a', 1550)).toBe(true);
  });
});
