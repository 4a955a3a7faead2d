import { describe, expect, it } from 'vitest';
import { insert, join, ownCopy } from './text_lines';

describe('insert', () => {
  it('puts text in place of what is selected', () => {
    expect(insert(['spacer = 92'], 0, 9, 11, '"92 mm"')).toEqual({ lines: ['spacer = "92 mm"'], line: 0, at: 16 });
  });
  it('breaks the line where the text does', () => {
    expect(insert(['a', 'bcd', 'e'], 1, 1, 2, '1\r\n2\n3')).toEqual({ lines: ['a', 'b1', '2', '3d', 'e'], line: 3, at: 1 });
    expect(insert(['abcd'], 0, 2, 2, '\n')).toEqual({ lines: ['ab', 'cd'], line: 1, at: 0 });
  });
});

describe('join', () => {
  it('undoes a break, and leaves the first line alone', () => {
    expect(join(['ab', 'cd', 'e'], 1)).toEqual({ lines: ['abcd', 'e'], line: 0, at: 2 });
    expect(join(['ab'], 0)).toBeUndefined();
  });
});

// 2026-11-27: an own shaft that was copied from the demo stayed 'invented = true', and its papers said so.
describe('an own copy', () => {
  it('is no longer called invented', () => {
    expect(ownCopy('# Invented demo\n\n[shaft]\nname = "x"\ninvented = true  # by us\nflats = 6 # six\n')).toBe('[shaft]\nname = "x"\nflats = 6 # six\n');
  });
  it('keeps every other line', () => {
    const own = '[shaft]\nname = "the invented = true one"\n# a remark\n';
    expect(ownCopy(own)).toBe(own);
  });
});
