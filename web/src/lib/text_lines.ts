// text_lines.ts: editing a text line by line: what Enter, Backspace and paste do. Pure.

export interface Edit {
  readonly lines: readonly string[];
  /** Where the hand is afterwards. */
  readonly line: number;
  readonly at: number;
}

/** `text` put in place of what is selected from `from` to `to` in a line; it may hold line ends. */
export function insert(lines: readonly string[], line: number, from: number, to: number, text: string): Edit {
  const old = lines[line] ?? '';
  const parts = text.replaceAll('\r\n', '\n').replaceAll('\r', '\n').split('\n');
  const last = parts.at(-1)!;
  const put = parts.map((part, i) => (i === 0 ? old.slice(0, from) : '') + part + (i === parts.length - 1 ? old.slice(to) : ''));
  return {
    lines: [...lines.slice(0, line), ...put, ...lines.slice(line + 1)],
    line: line + parts.length - 1,
    at: parts.length === 1 ? from + last.length : last.length,
  };
}

/** Joins a line to the one before it; undefined for the first. */
export function join(lines: readonly string[], line: number): Edit | undefined {
  const before = lines[line - 1];
  if (before === undefined) return undefined;
  return { lines: [...lines.slice(0, line - 1), before + (lines[line] ?? ''), ...lines.slice(line + 1)], line: line - 1, at: before.length };
}

/** What somebody's own copy of a demo shaft begins with: without the remarks at its head, which tell of the demo, and without the line that calls it invented. */
export function ownCopy(toml: string): string {
  const lines = toml.split('\n');
  const head = lines.findIndex((line) => !/^\s*(#|$)/.test(line));
  return lines.slice(Math.max(0, head)).filter((line) => !/^\s*invented\s*=\s*true\s*(#.*)?$/.test(line)).join('\n');
}
