import { describe, expect, it } from 'vitest';
import { idMaker, uuid7 } from './ids';

describe('uuid7', () => {
  it('makes the example of the standard', () => {
    // Source: RFC 9562, appendix A.6: 017F22E2-79B0-7CC3-98C4-DC0C0C07398F of 1645557742000 ms,
    // rand_a 0xCC3, rand_b 0b01, 0x8C4DC0C0C07398F.
    const random = new Uint8Array([0x0c, 0xc3, 0x18, 0xc4, 0xdc, 0x0c, 0x0c, 0x07, 0x39, 0x8f]);
    expect(uuid7(1645557742000, random)).toBe('017f22e2-79b0-7cc3-98c4-dc0c0c07398f');
  });
  it('marks version and variant whatever the random bytes are', () => {
    expect(uuid7(0, new Uint8Array(10).fill(255))).toBe('00000000-0000-7fff-bfff-ffffffffffff');
    expect(uuid7(0, new Uint8Array(10))).toBe('00000000-0000-7000-8000-000000000000');
  });
});

describe('idMaker', () => {
  it('sorts as made, also in one millisecond and when the clock goes back', () => {
    let clock = 1000;
    const make = idMaker(() => clock, () => crypto.getRandomValues(new Uint8Array(10)));
    const made = Array.from({ length: 5000 }, () => make());
    clock = 900;
    made.push(make());
    clock = 2000;
    made.push(make());
    expect([...made].sort()).toEqual(made);
    expect(new Set(made).size).toBe(made.length);
  });
});
