// words.mjs: src/words.gen.ts, the page's own words, from words/<language>/page.toml.
//   node scripts/words.mjs          writes it
//   node scripts/words.mjs --check  says whether it is as the dictionary has it
// Reads what those files hold and nothing more: comments, and lines `"page.code" = "sentence"`.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const web = resolve(dirname(fileURLToPath(import.meta.url)), '..');
const source = resolve(web, '../words/en/page.toml');
const target = resolve(web, 'src/words.gen.ts');

const entries = [];
readFileSync(source, 'utf8').split('\n').forEach((line, index) => {
  if (/^\s*(#|$)/.test(line)) return;
  const found = /^("(?:page\.[a-z0-9_.]+)")\s*=\s*("(?:[^"\\]|\\.)*")\s*$/.exec(line);
  if (!found) {
    console.error(`${source}:${index + 1}: not "page.code" = "sentence"`);
    process.exit(2);
  }
  entries.push([JSON.parse(found[1]), JSON.parse(found[2])]);
});
const text = `// Made by scripts/words.mjs from words/en/page.toml: do not edit.
export const words = {
${entries.map(([code, sentence]) => `  ${JSON.stringify(code)}: ${JSON.stringify(sentence)},`).join('\n')}
} as const;
`;
if (process.argv.includes('--check')) {
  const same = existsSync(target) && readFileSync(target, 'utf8') === text;
  console.log(`${same ? 'ok' : 'not ok'} words of the page are those of the dictionary${same ? '' : ': run npm run words'}`);
  process.exit(same ? 0 : 1);
}
writeFileSync(target, text);
