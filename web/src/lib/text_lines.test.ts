import { describe, expect, it } from 'vitest';
import { insert, join } from './text_lines';

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
