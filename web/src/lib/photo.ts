// photo.ts: how large a photo is kept.

export const kLongestSide = 2048;

/** Size of a photo made smaller so that its longer side is at most `longest`; never larger than it was. */
export function photoSize(width: number, height: number, longest = kLongestSide): { width: number; height: number } {
  const scale = Math.min(1, longest / Math.max(width, height));
  return { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) };
}

export const hexOf = (bytes: Uint8Array): string => Array.from(bytes, (b) => b.toString(16).padStart(2, '0')).join('');
