import { describe, expect, it } from 'vitest';
import { hexOf, photoSize } from './photo';
import { sha256 } from './sha256';

describe('photoSize', () => {
  it('keeps the shape and never makes larger', () => {
    expect(photoSize(4096, 3072)).toEqual({ width: 2048, height: 1536 });
    expect(photoSize(3000, 4000)).toEqual({ width: 1536, height: 2048 });
    expect(photoSize(800, 600)).toEqual({ width: 800, height: 600 });
    expect(photoSize(40000, 1)).toEqual({ width: 2048, height: 1 });
  });
});

describe('hexOf', () => {
  it('writes a hash as the server names blobs', async () => {
    // Source: FIPS 180-4 example, SHA-256 of "abc".
    const hash = await crypto.subtle.digest('SHA-256', new TextEncoder().encode('abc'));
    expect(hexOf(new Uint8Array(hash))).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  });
});

describe('sha256', () => {
  it('makes the hashes of the standard', () => {
    // Source: FIPS 180-4 examples (NIST, SHA256.pdf) for "abc" and the two-block message; RFC 6234 section 8.5 for a million "a".
    const hash = (text: string) => hexOf(sha256(new TextEncoder().encode(text)));
    expect(hash('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
    expect(hash('abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq'))
      .toBe('248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1');
    expect(hash('a'.repeat(1_000_000))).toBe('cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0');
  });
  it('agrees with the browser at every length around a block', async () => {
    for (let length = 0; length < 140; ++length) {
      const bytes = crypto.getRandomValues(new Uint8Array(length));
      expect(sha256(bytes)).toEqual(new Uint8Array(await crypto.subtle.digest('SHA-256', bytes)));
    }
  });
});
