// shop.mjs: a folder of files that a record is made from, other than the demo's: an empty workshop, or one with a shaft.
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const roles = ['bench', 'lead', 'owner'];
const capital = (word) => word[0].toUpperCase() + word.slice(1);
const noWorkshop = '[workshop]\nname = "An empty workshop"\ninvented = true\ncurrency = "EUR"\n';

/** With a shaft: one machine called 'Simulated' that has it, one customer, and a person a role. Without: nothing and nobody. */
export function shop({ workshop = noWorkshop, shaft } = {}) {
  const folder = mkdtempSync(join(tmpdir(), 'flatwise-shop-'));
  const put = (name, text) => writeFileSync(join(folder, name), text);
  put('workshop.toml', workshop);
  put('job-31.toml', '');
  for (const name of ['long-nine', 'short-three', 'five', 'square-four']) put(`${name}.toml`, shaft ?? '');
  const people = roles.map((role) => `[[person]]\nid = "${role}"\nname = "${capital(role)}"\nrole = "${role}"\n`).join('');
  const machine = '[[customer]]\nid = "c"\nname = "Simulated growers"\nreach = "the gate"\n[[machine]]\nshaft = "five"\nname = "Simulated"\ncustomer = "c"\n';
  put('record.toml', `${shaft ? people + machine : ''}[past]\nnote = ""\nreason = ""\n`);
  mkdirSync(join(folder, 'history'));
  for (const [name, head] of [['jobs', 'job'], ['hours', 'shaft,date'], ['bearings', 'shaft']]) put(`history/${name}.csv`, `${head}\n`);
  return folder;
}
