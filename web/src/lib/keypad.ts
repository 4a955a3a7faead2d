// keypad.ts: what the keys of the keypad do to the figure being typed. Pure: press() gives the next state, the same one
// where a key is dead; undo always takes back exactly the last key.
import { difference, ending, inUnit, readFigure, sum } from './units';

export type Digit = '0' | '1' | '2' | '3' | '4' | '5' | '6' | '7' | '8' | '9';
export type Lower = '2' | '4' | '8' | '16' | '32' | '64';
/** '/16' is the lower number of a fraction by one key; digits typed on a keyboard spell it. */
export type Key = Digit | '.' | '±' | 'fraction' | 'thou' | 'undo' | `/${Lower}`;
export const lowers: readonly Lower[] = ['2', '4', '8', '16', '32', '64'];

/** What is being typed, as the field says it. */
export interface Wanted {
  /** Kind of quantity, or 'count', or 'number': no unit, kept as typed. */
  readonly kind: string;
  /** What a difference is typed from. */
  readonly reference?: { readonly value: number; readonly unit: string } | undefined;
}

export interface Typed {
  /** Before and behind the point; before the fraction, where there is one. */
  readonly digits: string;
  readonly negative: boolean;
  /** The figure is a difference from the reference. */
  readonly difference: boolean;
  /** none: a decimal. upper: its upper number is being typed; lower: the lower one. */
  readonly fraction: 'none' | 'upper' | 'lower';
  readonly upper: string;
  readonly lower: string;
  readonly unit: string;
  /** Before the last key. */
  readonly before: Typed | undefined;
}

const mostDigits = 12;
const signed = ['temperature', 'temperature_rise', 'angle'];

export const empty = (unit: string): Typed => ({
  digits: '', negative: false, difference: false, fraction: 'none', upper: '', lower: '', unit, before: undefined,
});
export const isEmpty = (typed: Typed): boolean =>
  typed.digits === '' && typed.fraction === 'none' && !typed.negative && !typed.difference;
const isLower = (text: string): text is Lower => (lowers as readonly string[]).includes(text);

/** The reference in the unit being typed, as text; undefined where it cannot be said exactly. */
export function referenceIn(wanted: Wanted, unit: string): string | undefined {
  const { reference } = wanted;
  if (!reference) return undefined;
  // Twelve digits: what a gauge block or a ring is marked with, without the tail of a binary fraction.
  const text = Number(reference.value.toPrecision(12)).toString();
  if (reference.unit === unit) return text;
  const read = readFigure(text);
  const there = read && inUnit(read.value, reference.unit, unit);
  return there && ending(there);
}

function digit(typed: Typed, key: Digit): Partial<Typed> | undefined {
  if (typed.fraction === 'upper') {
    if (typed.upper.length >= 2 || (typed.upper === '' && key === '0')) return undefined;
    const upper = typed.upper + key;
    return Number(upper) < 64 ? { upper } : undefined;
  }
  if (typed.fraction === 'lower') {
    const lower = typed.lower + key;
    const leads = lowers.some((whole) => whole.startsWith(lower) && Number(whole) > Number(typed.upper));
    return isLower(typed.lower) || !leads ? undefined : { lower };
  }
  if (typed.digits.replace('.', '').length >= mostDigits) return undefined;
  return { digits: typed.digits === '0' ? key : typed.digits + key };
}

function point(typed: Typed, wanted: Wanted): Partial<Typed> | undefined {
  if (wanted.kind === 'count' || typed.fraction !== 'none' || typed.digits.includes('.')) return undefined;
  return { digits: typed.digits === '' ? '0.' : `${typed.digits}.` };
}

/** With a reference: figure, difference over, difference under, figure. Else the sign, where one is possible. */
function plusMinus(typed: Typed, wanted: Wanted): Partial<Typed> | undefined {
  if (typed.fraction !== 'none') return undefined;
  if (referenceIn(wanted, typed.unit) === undefined)
    return signed.includes(wanted.kind) && !wanted.reference ? { negative: !typed.negative } : undefined;
  if (!typed.difference) return { difference: true, negative: false };
  return typed.negative ? { difference: false, negative: false } : { negative: true };
}

/** What was typed becomes the whole number; pressed again, the lower number is asked. */
function fraction(typed: Typed): Partial<Typed> | undefined {
  if (!['in', 'ft'].includes(typed.unit) || typed.difference) return undefined;
  if (typed.fraction === 'upper' && typed.upper !== '') return { fraction: 'lower' };
  return typed.fraction === 'none' && !typed.digits.includes('.') ? { fraction: 'upper' } : undefined;
}

function over(typed: Typed, lower: Lower): Partial<Typed> | undefined {
  if (typed.fraction === 'none' || typed.upper === '' || typed.lower !== '') return undefined;
  return Number(typed.upper) < Number(lower) ? { fraction: 'lower', lower } : undefined;
}

/** Digits typed go behind .00 or .0: 5 thou is 0.005 in. */
function thou(typed: Typed): Partial<Typed> | undefined {
  if (typed.unit !== 'in' || typed.fraction !== 'none' || !/^\d{1,3}$/.test(typed.digits)) return undefined;
  return { digits: `0.${typed.digits.padStart(3, '0')}` };
}

function change(typed: Typed, key: Exclude<Key, 'undo'>, wanted: Wanted): Partial<Typed> | undefined {
  if (key === '.') return point(typed, wanted);
  if (key === '±') return plusMinus(typed, wanted);
  if (key === 'fraction') return wanted.kind === 'count' ? undefined : fraction(typed);
  if (key === 'thou') return wanted.kind === 'count' ? undefined : thou(typed);
  if (key.startsWith('/')) return over(typed, key.slice(1) as Lower);
  return digit(typed, key as Digit);
}

export function press(typed: Typed, key: Key, wanted: Wanted): Typed {
  if (key === 'undo') return typed.before ?? typed;
  const changed = change(typed, key, wanted);
  return changed ? { ...typed, ...changed, before: typed } : typed;
}
/** Whether the key would do anything now. */
export const alive = (typed: Typed, key: Key, wanted: Wanted): boolean => press(typed, key, wanted) !== typed;

/** The field changes, not the figure in it: the digits stay as typed. */
export const inOtherUnit = (typed: Typed, unit: string): Typed =>
  unit === typed.unit ? typed : { ...typed, unit, before: typed };

const minus = (typed: Typed): string => (typed.negative && /[1-9]/.test(typed.digits) ? '−' : '');

/** The figure without its unit, a difference already added to the reference; undefined while it is not a possible one. */
export function figure(typed: Typed, wanted: Wanted): string | undefined {
  if (typed.fraction !== 'none') {
    if (!isLower(typed.lower) || Number(typed.upper) >= Number(typed.lower)) return undefined;
    return `${typed.digits === '' || typed.digits === '0' ? '' : `${typed.digits} `}${typed.upper}/${typed.lower}`;
  }
  if (!/^\d+(\.\d+)?$/.test(typed.digits)) return undefined;
  if (!typed.difference) return minus(typed) + typed.digits;
  const reference = referenceIn(wanted, typed.unit);
  return reference === undefined ? undefined : sum(reference, minus(typed) + typed.digits);
}

/** The text to be kept, "3.9365 in", with a plain minus sign; a count is its digits. */
export function text(typed: Typed, wanted: Wanted): string | undefined {
  const found = figure(typed, wanted)?.replace('−', '-');
  // A degree sign stands at its figure; every other unit after a space.
  return found === undefined || typed.unit === '' ? found : `${found}${typed.unit === '°' ? '' : ' '}${typed.unit}`;
}

/** How far the figure lies from the reference, with its sign: "−0.0005". */
export function fromReference(typed: Typed, wanted: Wanted): string | undefined {
  const found = figure(typed, wanted);
  const reference = referenceIn(wanted, typed.unit);
  if (found === undefined || reference === undefined) return undefined;
  const apart = difference(found, reference);
  return apart === undefined || apart.startsWith('−') ? apart : `+${apart}`;
}

/** As it stands in the field: sign and digits, then the fraction. */
export function shown(typed: Typed): { lead: string; upper: string; lower: string } {
  const sign = typed.difference ? (typed.negative ? '−' : '+') : typed.negative ? '−' : '';
  return { lead: sign + typed.digits, upper: typed.upper, lower: typed.lower };
}

/** The key of the pad that a key of a keyboard stands for. */
export function keyOf(name: string, typed: Typed): Key | undefined {
  if (/^[0-9]$/.test(name)) return name as Digit;
  if (name === '.' || name === ',') return '.';
  if (name === '-' || name === '+') return '±';
  if (name === '/' || (name === ' ' && typed.fraction === 'none')) return 'fraction';
  return name === 'Backspace' ? 'undo' : undefined;
}
