// types.mjs: src/api/types.gen.ts from schemas/api/openapi.json.
//   node scripts/types.mjs          writes it
//   node scripts/types.mjs --check  says whether it is as the contract has it
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import openapiTS, { astToString } from 'openapi-typescript';

const web = resolve(dirname(fileURLToPath(import.meta.url)), '..');
const api = resolve(web, '../schemas/api');
const target = resolve(web, 'src/api/types.gen.ts');

const read = (path) => JSON.parse(readFileSync(path, 'utf8'));

/** All that a schema file's own `definitions` hold becomes a component of its own, under `prefix`. */
function take_in(contract, file, name, folder) {
  const schema = read(resolve(folder, file));
  const rest = JSON.stringify(schema.definitions ?? schema.$defs ?? {});
  delete schema.definitions;
  delete schema.$defs;
  delete schema.$schema;
  delete schema.$id;
  const moved = (text) => text
    .replaceAll(/"([\w.-]*)#\/(?:definitions|\$defs)\/(\w+)"/g, (_, from, part) => `"#/components/schemas/${from ? label(from) : name}_${part}"`)
    .replaceAll(/"\$ref":\s*"([\w-]+)\.schema\.json"/g, (_, from) => `"$ref":"#/components/schemas/${label(from)}"`);
  contract.components.schemas[name] = JSON.parse(moved(JSON.stringify(schema)));
  for (const [part, held] of Object.entries(JSON.parse(moved(rest)))) contract.components.schemas[`${name}_${part}`] = held;
}
const label = (file) => file.replace(/\.schema\.json$|\.json$/, '').split('-').map((w) => w[0].toUpperCase() + w.slice(1)).join('');

const contract = read(resolve(api, 'openapi.json'));
const output = resolve(api, '../output');
// These reports are read by programs, not by the page: the page needs no type of their inside.
for (const report of ['JobReport', 'PatternReport', 'BendReport', 'BearingReport']) contract.components.schemas[report] = { type: 'object' };
take_in(contract, 'common.schema.json', 'Common', output);
take_in(contract, 'figure-spec.schema.json', 'FigureSpec', output);
take_in(contract, 'figures.schema.json', 'Figures', output);
contract.components.schemas.Working = { $ref: '#/components/schemas/Common_working' };
const bodies = resolve(api, 'entry-bodies.json');
if (existsSync(bodies)) take_in(contract, 'entry-bodies.json', 'EntryBody', api);
else contract.components.schemas.EntryBody = { type: 'object', required: ['kind'], properties: { kind: { type: 'string' } }, additionalProperties: true };

const ast = await openapiTS(contract, { alphabetize: false, defaultNonNullable: false });
const text = `// Made by scripts/types.mjs from schemas/api/openapi.json: do not edit.\n${astToString(ast)}`;
if (process.argv.includes('--check')) {
  const same = existsSync(target) && readFileSync(target, 'utf8') === text;
  console.log(`${same ? 'ok' : 'not ok'} types of the page are those of the contract${same ? '' : ': run npm run types'}`);
  process.exit(same ? 0 : 1);
}
writeFileSync(target, text);
