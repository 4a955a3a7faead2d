// half_done.mjs: the demo's job 31, half done with mistakes waiting, finished at the page from where it stands by what its line says;
// on the way who may sign and release what; at its end the paper that is handed over.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { tell } from '../lib/api.mjs';
import { Hand } from '../lib/hand.mjs';
import { Mechanic } from '../lib/mechanic.mjs';
import { wordsOf } from '../lib/paper.mjs';
import { Server } from '../lib/server.mjs';

const flat = (text) => text.replace(/\s+/g, ' ').trim();
const plane = (letter, readings) => Object.fromEntries(readings.map((figure, i) => [`Plane ${letter}, direction ${i + 1}`, { figure, unit: 'mm', gauge: 'BG-2' }]));

/** What puts the six right, as the demo's finished job has it: demo/job-31-done.toml. */
const mended = {
  inspect: { 3: { ...plane('A', ['99.9765', '99.9770', '99.9768', '99.9763']), ...plane('B', ['99.9750', '99.9753', '99.9751', '99.9748']) } },
  press: { 3: '450' },
  marks: { 4: { b: 1 } },
  stack: { figure: '1674.05', unit: 'mm', gauge: 'BAR-1' },
  torque: '225',
  run: {
    'How long it ran': { figure: '40' },
    'Temperature of the room': { figure: '57', unit: '°F', gauge: 'TH-1' },
    ...Object.fromEntries(['A', 'M', 'B'].flatMap((end, i) => [
      [`Hanger ${end}, temperature`, { figure: String(104 + 3 * i), unit: '°F', gauge: 'TH-1' }],
      [`Hanger ${end}, vibration`, { figure: '0.09', unit: 'in/s', gauge: 'VM-1' }],
    ])),
  },
};

/** On a server of its own: the other suites want the job as the demo has it. */
export async function halfDone(report, browser) {
  const server = await Server.start();
  try {
    await finished(report, browser, server);
  } finally {
    await server.stop();
  }
}

async function finished(report, browser, server) {
  const job = (await server.get('/api/jobs')).jobs.find((one) => one.number === '31').id;
  const people = (await server.get('/api/people')).people;
  const hand = await Hand.at(browser, server.base, 'tablet', { person: people.find((one) => one.name === 'Bench').id });
  const mechanic = new Mechanic(hand, mended, { again: true });
  mechanic.people = people;
  try {
    await hand.go(`/job/${job}`);
    await mistakeFound(report, hand, server, job);
    await report.part('who may release a job that is blocked', () => blocked(report, hand, mechanic, server, job));
    await hand.go(`/job/${job}`);
    await mechanic.follow((text, stage) => stage === 'Release' && /^Sign|sign/.test(text));
    const marks = (await server.entries(job)).filter((e) => e.body.kind === 'mark_seen' && e.body.rotor === 4 && e.body.half === 'b').map((e) => e.body.flat);
    report.same(marks, [2, 1], 'the mistake is mended by an entry of its own; both stand');
    await report.part('who may sign', () => signing(report, hand, mechanic, server, job));
    const line = await mechanic.follow((text) => /^Released\./.test(text));
    report.check(/^Released\./.test(line), 'finished and released from where it stood', line);
    await paper(report, hand, server, job);
    report.same([...hand.small], [], 'every key tapped is 48 px or more each way');
    report.same(hand.complaints, [], 'the browser complains of nothing');
  } finally {
    await hand.context.close();
  }
}

async function mistakeFound(report, hand, server, job) {
  const found = (await server.get(`/api/jobs/${job}/report`)).stages.flatMap((stage) => stage.findings.map((f) => ({ ...f, stage: stage.stage })));
  const half = found.find((f) => f.code === 'timing.half_out');
  report.same([half?.where, half?.severity], [{ rotor: 4 }, 'out'], 'the record says that a half of rotor 4 is out of time');
  await hand.toStage('Time');
  await hand.tap(hand.station('4'));
  report.check(flat(await hand.sheet.innerText()).includes(flat(half.says)), 'the sheet of rotor 4 says so', () => half.says);
  report.check(flat(await hand.sheet.innerText()).includes(flat(half.do.says)), 'and what puts it right', () => half.do.says);
}

/** A key that cannot be pressed: why, in words; pressed all the same nothing happens. */
async function shut(report, hand, server, job, name, says, what) {
  const key = hand.sheet.getByRole('button', { name });
  if (!report.check((await key.count()) > 0, `${what}: there is a key`)) return;
  const why = await key.first().evaluate((e) => document.getElementById(e.getAttribute('aria-describedby') ?? '')?.textContent ?? '');
  report.check((await key.first().getAttribute('aria-disabled')) === 'true' && says.test(why), `${what}: the key is shut and says why and who may`, why || 'it says nothing');
  const before = (await server.entries(job)).length;
  await key.first().click({ force: true });
  await hand.page.waitForTimeout(250);
  report.same((await server.entries(job)).length, before, `${what}: pressed all the same, nothing is kept`);
}

/** The same by a device that does not ask the page. */
async function refused(report, server, job, by, body, what) {
  const before = (await server.entries(job)).length;
  const { status, json } = await tell(server, job, by, [body]);
  const problem = json?.problems?.[0];
  report.check(status === 422 && /lead|owner/i.test(`${problem?.allowed} ${problem?.mend}`), `${what}: the server refuses it too and says who may`, `${status} ${JSON.stringify(problem)}`);
  report.same((await server.entries(job)).length, before, `${what}: nothing is kept`);
}

async function blocked(report, hand, mechanic, server, job) {
  await hand.toStage('Release');
  await mechanic.as('Apprentice', async () => {
    const rows = await hand.sheet.locator('section.standing li').count();
    report.check(rows > 0, 'each open thing stands on the release sheet', rows);
    report.same(await hand.sheet.locator('section.standing li').evaluateAll((all) => all.filter((one) => !one.querySelector('.by b')?.textContent.trim()).length), 0, 'with who can lift it');
    report.same(await hand.sheet.locator('.force').count(), 0, 'an apprentice is not offered to release it all the same');
    await shut(report, hand, server, job, 'Release it', /open/i, 'release while things are open');
  });
  await mechanic.as('Lead', async () => report.same(await hand.sheet.locator('.force').count(), 1, 'a lead is, with a reason'));
  await refused(report, server, job, mechanic.people.find((one) => one.name === 'Apprentice').id, { kind: 'released', forced: true, reason: 'I want to go home' }, 'an apprentice forcing release');
}

async function signing(report, hand, mechanic, server, job) {
  const apprentice = mechanic.people.find((one) => one.name === 'Apprentice').id;
  await hand.toStage('Release');
  await mechanic.as('Bench', () => mechanic.answersFor('Bench signs', 'Bench'));
  await mechanic.as('Apprentice', async () => {
    await shut(report, hand, server, job, 'Lead signs', /lead/i, 'an apprentice for the lead');
    await shut(report, hand, server, job, 'Owner signs', /lead|owner/i, 'an apprentice for the owner');
    await shut(report, hand, server, job, 'Release it', /open|lead/i, 'an apprentice releasing');
  });
  await refused(report, server, job, apprentice, { kind: 'signed', as: 'lead' }, 'an apprentice signing as the lead');
  await mechanic.answersFor('Lead signs', 'Lead');
  await mechanic.as('Lead', () => shut(report, hand, server, job, 'Owner signs', /owner/i, 'the lead for the owner'));
  await mechanic.answersFor('Owner signs', 'Owner');
  await mechanic.as('Apprentice', () => shut(report, hand, server, job, 'Release it', /lead/i, 'an apprentice releasing what is complete'));
  await refused(report, server, job, apprentice, { kind: 'released', forced: false, reason: '' }, 'an apprentice releasing what is complete');
}

async function paper(report, hand, server, job) {
  await hand.page.evaluate(() => { window.open = (address) => { window.opened = address; return null; }; });
  await hand.tap(hand.page.locator('footer.next .keys .key').first(), { rest: false });
  const bytes = await server.get(await hand.page.evaluate(() => window.opened), 'bytes');
  const folder = mkdtempSync(join(tmpdir(), 'flatwise-handed-'));
  try {
    const file = join(folder, 'hand-over.pdf');
    writeFileSync(file, bytes);
    const checked = spawnSync('qpdf', ['--check', file], { encoding: 'utf8' });
    report.check(checked.status === 0, 'the hand-over record is a sound PDF (qpdf --check)', `${checked.stdout}${checked.stderr}${checked.error ?? ''}`);
    const pages = Number(spawnSync('qpdf', ['--show-npages', file], { encoding: 'utf8' }).stdout);
    report.figure('pages of the hand-over record', pages);
    const words = flat(wordsOf(bytes));
    const said = [...words.matchAll(/(?:page|sheet) (\d+) (?:of|\/) (\d+)/gi)].map((m) => [Number(m[1]), Number(m[2])]);
    report.check(pages >= 1 && said.every(([at, of]) => of === pages && at <= pages), 'its pages are counted as they are', () => JSON.stringify([pages, said]));
    for (const wanted of ['Tarn Hollow Growers', '3.9365 in', '99.9765 mm', '200 lbf', '450 lbf', '65.95 in', '1674.05 mm', '225 ft·lb'])
      report.check(words.includes(wanted), `the hand-over record says ${wanted}`, () => words.slice(0, 500));
    const entries = await server.entries(job);
    for (const who of ['Bench', 'Lead', 'Owner']) report.check(words.includes(who), `the hand-over record names ${who}`);
    report.check(words.replace(/\s/g, '').includes(entries.at(-1).hash), 'the hand-over record says the head of the chain', entries.at(-1).hash);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
