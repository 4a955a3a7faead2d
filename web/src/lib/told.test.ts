import { expect, test } from 'vitest';
import { told } from './told';

test('a value with its doubt is one text, with the decimals of the doubt', () => {
  expect(told({ value: { shown: '99.98400 mm' }, uncertainty: { shown: '99.984 ± 0.004 mm' } })).toBe('99.984 ± 0.004 mm');
});
test('a value that is exactly known stands alone, and so does one without end', () => {
  expect(told({ value: { shown: '99.984 mm' } })).toBe('99.984 mm');
  expect(told({ value: { shown: '∞' }, uncertainty: {} })).toBe('∞');
});
test('a word is its word', () => expect(told({ value: { value: 'oiled' } })).toBe('oiled'));
