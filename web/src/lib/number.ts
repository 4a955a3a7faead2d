// number.ts: a sentence with figures, in the pieces that are drawn: fractions apart, no line break between a figure and
// its unit or its ± U.

export type Piece =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'fraction'; readonly upper: string; readonly lower: string };

// Halves to sixty-fourths only, as inches are read: "24/7" or a date stays as it is.
const fraction = /(^|[^\d/.])(?:(\d+) )?(\d{1,2})\/(2|4|8|16|32|64)(?![\d/.]*\d|\/)/g;
const unitNames = 'mm/s|mm|cm|µm|m|in/s|in|thou|ft·lb|ft|in·lb|kg|lbf|lb|kN|N·m|N|bar|MPa|psi|°C|°F|min|h|s|%|g|r/min|/min|Hz';
const gap = new RegExp(`(\\d) (?=(?:${unitNames})(?![\\p{L}\\d]))`, 'gu');

/** With no-break spaces between a figure and its unit, and around ±. */
export const joined = (text: string): string => text.replace(gap, '$1\u00a0').replace(/ ?± ?(?=\d)/g, '\u00a0±\u00a0').replace(/^\u00a0±/, '±');

export function pieces(text: string): readonly Piece[] {
  const found: Piece[] = [];
  let done = 0;
  const put = (part: string) => {
    if (part !== '') found.push({ kind: 'text', text: joined(part) });
  };
  for (const match of text.matchAll(fraction)) {
    const [whole, lead = '', mixed, upper = '', lower = ''] = match;
    if (Number(upper) >= Number(lower)) continue;
    put(text.slice(done, match.index) + lead + (mixed ?? ''));
    found.push({ kind: 'fraction', upper, lower });
    done = match.index + whole.length;
    // The unit stays on the line of its fraction.
    if (new RegExp(`^ (?:${unitNames})(?![\\p{L}\\d])`, 'u').test(text.slice(done))) {
      found.push({ kind: 'text', text: '\u00a0' });
      done += 1;
    }
  }
  put(text.slice(done));
  return found;
}
