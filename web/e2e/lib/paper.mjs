// paper.mjs: what stands on a PDF, as poppler's pdftotext reads it.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export function wordsOf(pdf) {
  const folder = mkdtempSync(join(tmpdir(), 'flatwise-paper-'));
  try {
    writeFileSync(join(folder, 'a.pdf'), pdf);
    const run = spawnSync('pdftotext', ['-layout', join(folder, 'a.pdf'), '-'], { encoding: 'utf8' });
    if (run.status !== 0) throw new Error(`pdftotext: ${run.stderr || run.error}`);
    return run.stdout;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
