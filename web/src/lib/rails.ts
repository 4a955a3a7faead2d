// rails.ts: where the cells of a rail stand: each as near as can be to its part, in order, none over another.

export interface RailCell {
  /** Middle of the part in the drawing, px. */
  readonly wanted: number;
  readonly width: number;
}

/** How wide the cells of a rail are together, px. */
export const widthOf = (cells: readonly RailCell[], gap: number): number =>
  cells.reduce((sum, cell) => sum + cell.width, 0) + gap * Math.max(0, cells.length - 1);

interface Run {
  /** Left edge that each cell of the run would like the run to have. */
  likes: number[];
  width: number;
  count: number;
}

/**
 * Left edges of the cells by the least total shift from their parts; order kept, `gap` between, all inside 0 .. `room`.
 * null: they do not fit.
 *
 * Cells that would touch join into a run; a run stands at the median of the places its cells would like it to have, which
 * is the least sum of absolute shifts (pool adjacent violators).
 */
export function placeCells(cells: readonly RailCell[], room: number, gap = 0): number[] | null {
  if (widthOf(cells, gap) > room) return null;
  const runs: Run[] = [];
  for (const cell of cells) {
    let run: Run = { likes: [cell.wanted - cell.width / 2], width: cell.width, count: 1 };
    for (let before = runs.at(-1); before && leftOf(before, room) + before.width + gap > leftOf(run, room); before = runs.at(-1)) {
      runs.pop();
      const shift = before.width + gap;
      run = {
        likes: [...before.likes, ...run.likes.map((left) => left - shift)],
        width: shift + run.width,
        count: before.count + run.count,
      };
    }
    runs.push(run);
  }
  const lefts: number[] = [];
  for (const run of runs) {
    let left = leftOf(run, room);
    for (let i = 0; i < run.count; ++i) {
      lefts.push(left);
      left += cells[lefts.length - 1]!.width + gap;
    }
  }
  return lefts;
}

function leftOf(run: Run, room: number): number {
  const sorted = [...run.likes].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  const middle = sorted.length % 2 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
  return Math.min(Math.max(0, middle), room - run.width);
}

/** A leader from the part to its cell: straight down, then over where they are apart. `lip`: length of the straight ends. */
export function leader(part: number, cell: number, from: number, to: number, lip = 12): [number, number][] {
  if (Math.abs(part - cell) < 0.5) return [[part, from], [part, to]];
  const down = to > from ? lip : -lip;
  return [[part, from], [part, to - 2 * down], [cell, to - down], [cell, to]];
}

/** The bracket on the drawing: which parts a scrolled rail shows. null: none in sight. */
export function inSight(cells: readonly { left: number; width: number }[], scrolled: number, room: number): [number, number] | null {
  const seen = cells.flatMap((cell, i) => (cell.left + cell.width / 2 >= scrolled && cell.left + cell.width / 2 <= scrolled + room ? [i] : []));
  return seen.length ? [seen[0]!, seen.at(-1)!] : null;
}
