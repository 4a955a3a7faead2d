// sha256.ts: SHA-256 (FIPS 180-4), for pages served without TLS in the workshop's own network: there the browser's own is
// shut away. A photo of 400 kB takes some 20 ms.

const kRounds = new Uint32Array([
  0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5, 0xd807aa98, 0x12835b01, 0x243185be,
  0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174, 0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa,
  0x5cb0a9dc, 0x76f988da, 0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967, 0x27b70a85,
  0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85, 0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3,
  0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070, 0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f,
  0x682e6ff3, 0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2,
]);
const kStart = [0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a, 0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19];

const turned = (x: number, by: number): number => (x >>> by) | (x << (32 - by));

export function sha256(bytes: Uint8Array): Uint8Array {
  const padded = new Uint8Array(((bytes.length + 8) >> 6) * 64 + 64);
  padded.set(bytes);
  padded[bytes.length] = 0x80;
  const view = new DataView(padded.buffer);
  view.setUint32(padded.length - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(padded.length - 4, (bytes.length * 8) >>> 0);
  const state = Uint32Array.from(kStart);
  const w = new Uint32Array(64);
  for (let at = 0; at < padded.length; at += 64) block(view, at, w, state);
  const out = new DataView(new ArrayBuffer(32));
  state.forEach((word, i) => out.setUint32(4 * i, word));
  return new Uint8Array(out.buffer);
}

function block(view: DataView, at: number, w: Uint32Array, state: Uint32Array): void {
  for (let i = 0; i < 16; ++i) w[i] = view.getUint32(at + 4 * i);
  for (let i = 16; i < 64; ++i) {
    const a = w[i - 15]!, b = w[i - 2]!;
    const low = turned(a, 7) ^ turned(a, 18) ^ (a >>> 3);
    const high = turned(b, 17) ^ turned(b, 19) ^ (b >>> 10);
    w[i] = (w[i - 16]! + low + w[i - 7]! + high) | 0;
  }
  let [a, b, c, d, e, f, g, h] = state as unknown as [number, number, number, number, number, number, number, number];
  for (let i = 0; i < 64; ++i) {
    const t1 = (h + (turned(e, 6) ^ turned(e, 11) ^ turned(e, 25)) + ((e & f) ^ (~e & g)) + kRounds[i]! + w[i]!) | 0;
    const t2 = ((turned(a, 2) ^ turned(a, 13) ^ turned(a, 22)) + ((a & b) ^ (a & c) ^ (b & c))) | 0;
    [h, g, f, e, d, c, b, a] = [g, f, e, (d + t1) | 0, c, b, a, (t1 + t2) | 0];
  }
  [a, b, c, d, e, f, g, h].forEach((word, i) => (state[i] = (state[i]! + word) | 0));
}
