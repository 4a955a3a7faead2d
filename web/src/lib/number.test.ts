import { expect, test } from 'vitest';
import { joined, pieces } from './number';

const drawn = (text: string) =>
  pieces(text).map((p) => (p.kind === 'text' ? p.text : `[${p.upper}|${p.lower}]`)).join('');

test.each([
  ['4 5/8 in', '4[5|8]\u00a0in'],
  ['Socket 2 3/4 in. Nut', 'Socket 2[3|4]\u00a0in. Nut'],
  ['5/64', '[5|64]'],
  ['(1/2)', '([1|2])'],
  ['12 63/64 and 1/16', '12[63|64] and [1|16]'],
])('fractions of an inch are drawn: %s', (text, out) => expect(drawn(text)).toBe(out));

test.each(['1/3', '24/7', '8/8', '9/2', '1/2/26', '11/25/2026', '3/4.5', '480 /min'.replace(' ', '\u00a0')])(
  'what is not a fraction of an inch stays: %s', (text) => expect(drawn(text)).toBe(text));

test('a figure keeps to its unit and to its ± U', () => {
  expect(joined('3.9365 ± 0.0002 in, 40 min at 480 /min')).toBe(
    '3.9365\u00a0±\u00a00.0002\u00a0in, 40\u00a0min at 480\u00a0/min');
  expect(joined('± 0.03 in')).toBe('±\u00a00.03\u00a0in');
  expect(joined('rotor 4 is in place')).toBe('rotor 4 is in place');
  expect(joined('4 inner rings')).toBe('4 inner rings');
});
