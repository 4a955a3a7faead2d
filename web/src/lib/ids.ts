// ids.ts: RFC 9562 UUID version 7: sorts by the time it was made.

/** `ms`: milliseconds since 1970; `random`: ten bytes. */
export function uuid7(ms: number, random: Uint8Array): string {
  const bytes = new Uint8Array(16);
  for (let i = 0; i < 6; ++i) bytes[i] = Math.floor(ms / 2 ** (8 * (5 - i))) & 0xff;
  bytes.set(random.subarray(0, 10), 6);
  bytes[6] = (bytes[6]! & 0x0f) | 0x70;
  bytes[8] = (bytes[8]! & 0x3f) | 0x80;
  const hex = Array.from(bytes, (b) => b.toString(16).padStart(2, '0')).join('');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
}

/** Makes ids that sort in the order they were made, also when the clock stands still or goes back. */
export function idMaker(now: () => number, random: () => Uint8Array): () => string {
  let last = -1;
  let count = 0;
  return () => {
    const ms = now();
    if (ms > last) {
      last = ms;
      count = 0;
    } else {
      // RFC 9562 section 6.2, method 1: the first random bits count what falls into one millisecond.
      count += 1;
      if (count > 0xfff) {
        last += 1;
        count = 0;
      }
    }
    const bytes = random();
    bytes[0] = count >> 8;
    bytes[1] = count & 0xff;
    return uuid7(last, bytes);
  };
}
