// units.ts: exact factors between the units a keypad offers, for showing the other unit under a typed figure. Only for
// show: what is kept is the text as typed, and the server reads it.

/** A quotient of whole numbers, never rounded. */
export interface Exact {
  readonly over: bigint;
  readonly under: bigint;
}

/** One unit in a base unit of its kind: base = (figure + zero) x factor. */
interface Unit {
  readonly kind: string;
  readonly factor: Exact;
  readonly zero: Exact;
}

const nought: Exact = { over: 0n, under: 1n };
const unit = (kind: string, over: bigint, under = 1n, zero: Exact = nought): Unit => ({ kind, factor: { over, under }, zero });

// Exact by definition: inch 25.4 mm and pound 0.45359237 kg (international yard and pound, 1959), standard gravity
// 9.80665 m/s² (3rd CGPM, 1901), zero of the Celsius scale 273.15 K (SI brochure, 9th edition, 2.3.1).
const pound = { over: 45_359_237n, under: 100_000_000n };
const gravity = { over: 980_665n, under: 100_000n };
const poundForce = { over: pound.over * gravity.over, under: pound.under * gravity.under };

const units: Readonly<Record<string, Unit>> = {
  mm: unit('length', 1n, 1000n),
  cm: unit('length', 1n, 100n),
  m: unit('length', 1n),
  'µm': unit('length', 1n, 1_000_000n),
  in: unit('length', 254n, 10_000n),
  thou: unit('length', 254n, 10_000_000n),
  ft: unit('length', 3048n, 10_000n),
  kg: unit('mass', 1n),
  lb: unit('mass', pound.over, pound.under),
  N: unit('force', 1n),
  kN: unit('force', 1000n),
  lbf: unit('force', poundForce.over, poundForce.under),
  'N·m': unit('torque', 1n),
  'ft·lb': unit('torque', poundForce.over * 3048n, poundForce.under * 10_000n),
  'in·lb': unit('torque', poundForce.over * 254n, poundForce.under * 10_000n),
  bar: unit('pressure', 100_000n),
  MPa: unit('pressure', 1_000_000n),
  psi: unit('pressure', poundForce.over * 100_000_000n, poundForce.under * 254n * 254n),
  '°C': unit('temperature', 1n, 1n, { over: 27_315n, under: 100n }),
  '°F': unit('temperature', 5n, 9n, { over: 45_967n, under: 100n }),
  'mm/s': unit('speed', 1n, 1000n),
  'in/s': unit('speed', 254n, 10_000n),
};

const plus = (a: Exact, b: Exact): Exact => ({ over: a.over * b.under + b.over * a.under, under: a.under * b.under });
const minus = (a: Exact, b: Exact): Exact => plus(a, { over: -b.over, under: b.under });
const times = (a: Exact, b: Exact): Exact => ({ over: a.over * b.over, under: a.under * b.under });
const upsideDown = (a: Exact): Exact => ({ over: a.under, under: a.over });
const power = (places: number): bigint => 10n ** BigInt(places);

interface Read {
  readonly value: Exact;
  /** Size of the last digit typed; of a fraction one sixty-fourth, as fine as a rule is read. */
  readonly step: Exact;
}

/** "−0.0005", "3.9365", "4 5/8", "5/64" without a unit; undefined for anything else. */
export function readFigure(text: string): Read | undefined {
  const found = /^([-−+]?)(?:(\d+)(?:\.(\d+))?|(?:(\d+) )?(\d+)\/([1-9]\d*))$/.exec(text);
  if (!found) return undefined;
  const [, sign, whole, behind = '', mixed = '0', upper, lower] = found;
  const way = sign === '-' || sign === '−' ? -1n : 1n;
  if (upper !== undefined && lower !== undefined) {
    const under = BigInt(lower);
    return { value: { over: way * (BigInt(mixed) * under + BigInt(upper)), under }, step: { over: 1n, under: 64n } };
  }
  const under = power(behind.length);
  return { value: { over: way * BigInt(`${whole ?? '0'}${behind}`), under }, step: { over: 1n, under } };
}

/** Rounded half away from nought, with a true minus sign. */
export function decimal(value: Exact, places: number): string {
  const sign = value.over < 0n !== value.under < 0n && value.over !== 0n;
  const over = (value.over < 0n ? -value.over : value.over) * power(places);
  const under = value.under < 0n ? -value.under : value.under;
  const digits = ((2n * over + under) / (2n * under)).toString().padStart(places + 1, '0');
  const text = places === 0 ? digits : `${digits.slice(0, -places)}.${digits.slice(-places)}`;
  return `${sign && /[1-9]/.test(text) ? '−' : ''}${text}`;
}

/** Fewest places, at most nine, that hold the value exactly; undefined where it never ends. */
export function ending(value: Exact): string | undefined {
  for (let places = 0; places <= 9; places++)
    if ((value.over * power(places)) % value.under === 0n) return decimal(value, places);
  return undefined;
}

/** A figure of one unit in another of its kind, exactly; undefined where they do not belong together. */
export function inUnit(value: Exact, from: string, to: string): Exact | undefined {
  const here = units[from];
  const there = units[to];
  if (!here || !there || here.kind !== there.kind) return undefined;
  return minus(times(times(plus(value, here.zero), here.factor), upsideDown(there.factor)), there.zero);
}

/** Places behind the point so that the last one is no coarser than this step. */
function placesFor(step: Exact): number {
  let places = 0;
  while (places < 9 && step.over * power(places) < step.under) places++;
  return places;
}

/** "3.9365" of in as "99.987" of mm: as fine as what was typed, not finer than its last digit asks for. */
export function shownIn(text: string, from: string, to: string): string | undefined {
  const read = readFigure(text);
  if (!read) return undefined;
  const value = inUnit(read.value, from, to);
  const here = units[from];
  const there = units[to];
  if (!value || !here || !there) return undefined;
  return decimal(value, placesFor(times(times(read.step, here.factor), upsideDown(there.factor))));
}

/** Sum of two figures as written, exactly, with the digits of the finer one. Fractions are not added. */
export function sum(a: string, b: string): string | undefined {
  const left = readFigure(a);
  const right = readFigure(b);
  if (!left || !right || a.includes('/') || b.includes('/')) return undefined;
  const places = Math.max(a.split('.')[1]?.length ?? 0, b.split('.')[1]?.length ?? 0);
  return decimal(plus(left.value, right.value), places);
}
/** First less second: "3.9365", "3.9370" to "−0.0005". */
export const difference = (a: string, b: string): string | undefined =>
  sum(a, /^[-−]/.test(b) ? b.slice(1) : `−${b}`);
