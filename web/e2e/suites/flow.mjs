// flow.mjs: how the page goes with the hand: what was begun is not lost, what the stage wants is at hand, no tap for nothing.
import { Hand } from '../lib/hand.mjs';

const job31 = async (server) => (await server.get('/api/jobs')).jobs.find((one) => one.number === '31').id;
const personOf = async (server, role) => (await server.get('/api/people')).people.find((person) => person.role === role).id;

export async function flow(report, browser, server) {
  const job = await job31(server);
  const hand = await Hand.at(browser, server.base, 'tablet', { person: await personOf(server, 'bench') });
  try {
    await begun(report, hand, job);
    await openAlready(report, hand, server);
    await ownShaft(report, hand, server);
    await ownShaftInSight(report, hand, server);
    await showsWhere(report, hand, server, job);
    report.same(hand.complaints, [], 'the browser complains of nothing');
    report.same([...hand.small], [], 'every key tapped is 48 px or more each way');
  } finally {
    await hand.context.close();
  }
  await onThePhone(report, browser, server, job);
}

// 2026-11-27: on a telephone the verdict of timing stood two screens below the drawing that was tapped, and figures were cut.
async function onThePhone(report, browser, server, job) {
  const hand = await Hand.at(browser, server.base, 'phone', { person: await personOf(server, 'bench') });
  try {
    await hand.go(`/job/${job}?stage=timing`);
    await hand.tap(hand.station('4'));
    const top = (what) => hand.sheet.locator(what).first().evaluate((one) => one.getBoundingClientRect().top);
    const [drawn, verdict, keys, chips] = [await top('.picture'), await top('section.answer'), await top('.block.actions'), await top('section.chips')];
    report.check(drawn < verdict && verdict < keys && verdict < chips, 'the verdict stands under the drawing', JSON.stringify([drawn, verdict, keys, chips]));
    for (const stage of ['timing', 'stack', 'teardown', 'inspection']) {
      await hand.go(`/job/${job}?stage=${stage}`);
      await hand.tap(hand.station('3'));
      const wide = await hand.sheet.locator('.picture, .scroll').evaluateAll((all) => all.filter((one) => one.scrollWidth > one.clientWidth + 1).map((one) => one.getAttribute('aria-label') ?? one.className));
      report.same(wide, [], `${stage}: nothing runs out of its column`);
    }
  } finally {
    await hand.context.close();
  }
}

// 2026-11-27: after 'Go' the line asked for something on the sheet and had no key, and what it meant could be two screens down.
async function showsWhere(report, hand, server, job) {
  await hand.go(`/job/${job}?stage=inspection`);
  const key = hand.page.locator('footer.next .keys .key').first();
  if (/^Go to/.test(await key.innerText())) await hand.tap(key);
  report.same((await key.innerText()).trim(), 'Show where', 'where the line leads on no further its key shows where');
  await hand.page.evaluate(() => window.scrollTo(0, 0));
  await hand.tap(key);
  const seen = await hand.page.locator('.sheet [data-field-now]').evaluate((one) => {
    const box = one.getBoundingClientRect();
    return box.top < window.innerHeight && box.bottom > 0;
  });
  report.check(seen, 'and what is asked is in sight');
}

// 2026-11-27: at 820 the drawing went out of sight while the text was written, and long lines were cut without a way to read them.
async function ownShaftInSight(report, hand, server) {
  const { shafts } = await server.get('/api/shafts');
  const nine = shafts.find((shaft) => /long nine/.test(shaft.name));
  await hand.go(`/shaft/${nine.id}/copy`);
  await hand.page.waitForTimeout(600);
  report.same(await hand.page.locator('.five li').count(), 5, 'the five lines stand beside the drawing');
  report.check(/5°/.test(await hand.page.locator('.five').innerText()), 'with what is written in them', () => hand.page.locator('.five').innerText());
  await hand.tap(hand.page.locator('.five button', { hasText: 'repeat' }));
  const top = await hand.page.locator('.look').evaluate((one) => one.getBoundingClientRect().top);
  report.check(top >= -1 && top < 60, 'the drawing stays in sight while a line far down is written', top);
  const cut = await hand.page.locator('.editor input').evaluateAll((all) => all.filter((one) => one.scrollWidth > one.clientWidth + 1).length);
  report.same(cut, 0, 'no line is cut');
  for (const words of ['Couple left over', 'Tine gap', 'Turns at a hanger', 'Assumed, not given', 'Rotor 1 from end A'])
    report.check((await hand.page.locator('main').innerText()).includes(words), `own shaft: ${words}`);
}

// 2026-11-27: a note was lost on the way to another stage and back, and half a figure on the way to another rotor.
async function begun(report, hand, job) {
  const note = () => hand.page.locator('section.notes textarea');
  const figure = async () => (await hand.page.locator('.field .figure').innerText()).trim();
  await hand.go(`/job/${job}?stage=inspection`);
  await hand.tap(hand.station('3'));
  await note().fill('Rust under ring');
  await hand.type('3.93', { keep: false });
  const typed = await figure();
  await hand.tap(hand.station('4'));
  report.check((await note().inputValue()) === '', 'a note of one rotor does not stand at another', () => note().inputValue());
  report.check((await figure()) !== typed, 'nor half a figure');
  await hand.toStage('Time');
  await hand.toStage('Inspect');
  await hand.tap(hand.station('3'));
  report.same(await note().inputValue(), 'Rust under ring', 'a note that was begun is there after another rotor and another stage');
  report.same(await figure(), typed, 'and so is half a figure');
  await hand.page.reload();
  await hand.quiet();
  report.same([await note().inputValue(), await figure()], ['Rust under ring', typed], 'and both after a reload');
  report.same(await hand.page.locator('[aria-label^="undo:"]').first().innerText(), 'undo', 'the key that takes an answer back has its word');
  await hand.tap(hand.page.locator('section.notes .key'));
  for (let i = 0; i < 4; ++i) await hand.press('undo');
  await hand.page.reload();
  await hand.quiet();
  await keptIsNotBegun(report, hand);
  report.same(await note().inputValue(), '', 'kept, it no longer stands in the field');
  report.check((await figure()) !== typed, 'emptied, a figure does not come back');
}

// 2026-11-27: Keep goes on to the next field at once; whoever came back to correct the figure found it typed in already.
async function keptIsNotBegun(report, hand) {
  const figure = async () => (await hand.page.locator('.field .figure').innerText()).trim();
  await hand.tap(hand.station('2'));
  const list = hand.page.locator('section.block', { has: hand.pad }).getByRole('combobox');
  const first = await list.locator('option:checked').innerText();
  await hand.type('3.9361');
  await list.selectOption({ label: first });
  await hand.press('4');
  report.check((await figure()).startsWith('4'), 'a figure that was kept does not stand in its field as one begun', figure);
  await hand.press('undo');
  await hand.tap(hand.station('3'));
}

// 2026-11-27: a copy of a demo shaft stayed invented on all its papers, and could be kept unchanged under the name of the first.
async function ownShaft(report, hand, server) {
  const { shafts } = await server.get('/api/shafts');
  const three = shafts.find((shaft) => /short three/.test(shaft.name));
  const keep = hand.page.locator('footer').getByRole('button', { name: 'Keep', exact: true });
  const rest = () => hand.page.waitForTimeout(600);
  await hand.go(`/shaft/${three.id}/copy`);
  await rest();
  report.check((await keep.getAttribute('aria-disabled')) === 'true', 'a copy that nobody changed cannot be kept');
  report.check(/own name/.test(await hand.nextLine()), 'the foot asks for a name of its own', () => hand.nextLine());
  const line = async (pattern, text) => {
    const fields = hand.page.locator('.editor input');
    const texts = await fields.evaluateAll((all) => all.map((one) => one.value));
    await fields.nth(texts.findIndex((one) => pattern.test(one))).fill(text);
    await rest();
  };
  await line(/^speed/, 'speed = "500 /min"');
  report.check((await keep.getAttribute('aria-disabled')) === 'true', 'nor one under the name of the first');
  await line(/^name/, 'name = "Own three"');
  report.check(/still say/.test(await hand.nextLine()), 'lines that still say what the first says are named', () => hand.nextLine());
  await hand.tap(keep);
  const own = (await server.get('/api/shafts')).shafts.find((shaft) => shaft.name === 'Own three');
  report.check(own !== undefined, 'it is kept under its own name');
  if (!own) return;
  const { toml } = await server.get(`/api/shafts/${own.id}`);
  report.check(!/^invented/m.test(toml) && !/Invented demo/.test(toml), 'and is called invented no more', toml.slice(0, 200));
}

// 2026-11-27: a machine whose job stood open offered to book it in, and nobody was told that this makes a second job.
async function openAlready(report, hand, server) {
  const { jobs } = await server.get('/api/jobs');
  const job = jobs.find((one) => one.number === '31');
  const main = hand.page.locator('footer .key').first();
  await hand.go(`/machine/${job.machine}`);
  report.same(await main.innerText(), 'Open job 31', 'the machine of an open job leads to that job');
  await hand.go(`/book?machine=${job.machine}`);
  report.check(/open job: 31/.test(await hand.text()), 'who books it in again is told so', () => hand.text());
  report.same(await main.innerText(), 'Open job 31', 'and led to the job that is open');
  await hand.go('/book');
  await hand.tap(hand.page.locator('footer').getByRole('button', { name: 'Book in', exact: true }));
  report.check(/which machine/.test(await hand.page.locator('[role=alert]').allInnerTexts().then((all) => all.join(' '))), 'without a machine the page says so itself', () => hand.text());
}
