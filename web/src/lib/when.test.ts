import { expect, test } from 'vitest';
import { when } from './when';

// Summer time in the zone named begins on 2026-03-29 at 01:00 UTC. Source: IANA time zone database.
test('by the clock of the place, not by UTC', () => {
  const now = new Date('2026-07-04T20:00:00Z');
  expect(when('2026-07-04T06:52:00.000Z', now, 'Europe/London')).toBe('7:52');
  expect(when('2026-01-04T07:52:00.000Z', now, 'Europe/London')).toBe('4 Jan 7:52');
});
test('another day is named, another year too', () => {
  const now = new Date('2026-03-03T00:30:00Z');
  expect(when('2026-03-02T23:59:00.000Z', now, 'UTC')).toBe('2 Mar 23:59');
  expect(when('2025-03-03T00:05:00.000Z', now, 'UTC')).toBe('3 Mar 2025 0:05');
});
test('what is no instant is shown as it came', () => expect(when('soon')).toBe('soon'));
