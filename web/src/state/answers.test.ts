import { expect, test } from 'vitest';
import type { Choice } from '../api/shapes';
import { standing } from './answers';

const choice = (reply: string, chosen = false): Choice => ({
  label: reply, chosen, draft: { corrects: [], body: { kind: 'answered', question: 'q', reply } } });
const both = [choice('yes', true), choice('no')];

test('what the server holds stands', () => expect(standing(both, [])).toEqual([0]));
test('two that differ both stand', () => expect(standing([choice('yes', true), choice('no', true)], [])).toEqual([0, 1]));
test('what was tapped last stands while it waits, whatever the order of its fields', () =>
  expect(standing(both, [{ draft: { corrects: [], body: { reply: 'no', question: 'q', kind: 'answered' } } }])).toEqual([1]));
test('an answer taken back leaves nothing standing', () =>
  expect(standing(both, [{ draft: { corrects: [], body: { kind: 'withdrawn', reason: '' } } }])).toEqual([]));
