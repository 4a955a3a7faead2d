// input.mjs: bad input on every sheet that takes any: said beside the field with what was read, what is allowed and what to do;
// nothing is saved.
import { Hand } from '../lib/hand.mjs';

/** Stage, what to tap first, field, and an impossible figure for it. */
const sheets = [
  ['Book in', '2', undefined, '9999', 'mm'],
  ['Inspect', '3', 'Plane A, direction 1', '999999', 'in'],
  ['Inspect', '3', 'Temperature of the hub', '9999', '°F'],
  ['Kit', '3', 'Stamped on half A', '999', '°'],
  ['Press', '3', undefined, '999999999999', 'lbf'],
  ['Stack', undefined, undefined, '999999', 'in'],
  ['Torque', 'nut A', undefined, '99999999', 'ft·lb'],
  ['Torque', 'nut A', 'Own tool: length', '99999', 'in'],
  ['Test run', undefined, 'How long it ran', '99999999', 'min'],
];

export async function badInput(report, browser, server) {
  const job = (await server.get('/api/jobs')).jobs.find((one) => one.number === '31').id;
  const person = (await server.get('/api/people')).people.find((one) => one.role === 'lead').id;
  const hand = await Hand.at(browser, server.base, 'tablet', { person });
  hand.expected = /422|400/;  // The refusal itself.
  try {
    for (const sheet of sheets)
      await report.part(`${sheet[0]}${sheet[2] ? `, ${sheet[2]}` : ''}`, () => one(report, hand, server, job, sheet));
    await report.part('booking in', () => form(report, hand, server));
    report.same(hand.complaints, [], 'the browser complains of nothing else');
  } finally {
    await hand.context.close();
  }
}

async function one(report, hand, server, job, [stage, station, field, figure, unit]) {
  const name = `${stage}${field ? `, ${field}` : ''}`;
  const count = async () => (await server.entries(job)).length;
  await hand.go(`/job/${job}`);
  await hand.toStage(stage);
  // Before the run the questions of the band stand in front of the sheet.
  const open = hand.page.locator('.band li:not(.settled) .key', { hasText: /^yes$/ });
  for (let left = 8; left > 0 && (await open.count()) > 0; left -= 1) await hand.tap(open);
  if (station) await hand.tap(hand.station(station));
  // What is known to be wrong stands before the pull and the run: the record still takes what happened.
  const all = hand.sheet.getByRole('button', { name: /all the same$/ });
  if (await all.count()) await hand.tap(all);
  if (field) await hand.field(field);
  const before = await count();
  const keep = hand.pad.getByRole('button', { name: 'Keep', exact: true });
  report.check((await keep.getAttribute('aria-disabled')) === 'true', `${name}: nothing typed, nothing to keep`);
  await keep.click({ force: true });
  // Letters from a keyboard.
  await hand.page.locator('.keypad input').focus();
  await hand.page.keyboard.type('abc');
  await hand.page.keyboard.press('Enter');
  report.check((await keep.getAttribute('aria-disabled')) === 'true', `${name}: letters are no figure`);
  const units = await hand.page.locator('.keypad').getByRole('group', { name: 'Unit' }).getByRole('button').allInnerTexts();
  report.check(units.includes(unit), `${name}: only units of its own can be chosen`, units.join(' '));
  await hand.type(figure, { unit });
  const refusal = hand.sheet.locator('.sent .refused');
  const said = (await refusal.count()) ? await refusal.first().innerText() : '';
  report.check(said.includes('Read') && said.includes('Allowed') && said.includes('Do') && said.includes(figure.slice(0, 3)),
    `${name}: an impossible figure is refused beside its field, with read, allowed and do`, said || 'nothing is said');
  report.same(await count(), before, `${name}: nothing is saved`);
  if (await refusal.count()) {
    await hand.tap(refusal.first().getByRole('button'));
    report.check((await refusal.count()) === 0, `${name}: it can be taken out`);
  }
}

async function form(report, hand, server) {
  await hand.go('/book');
  await hand.option('Machine', 'Edge loosener');
  await hand.quiet();
  // A job of it may stand open in the demo.
  if (await hand.key('A second job all the same').count()) await hand.tap('A second job all the same');
  const jobs = (await server.get('/api/jobs')).jobs.length;
  for (const [hours, why] of [['abc', 'letters'], ['12 kg', 'a wrong unit'], ['-5', 'an impossible value']]) {
    await hand.page.getByLabel('Hour meter').fill(hours);
    await hand.tap(hand.page.locator('footer').getByRole('button', { name: 'Book in' }));
    const said = (await hand.page.locator('.refusal').allInnerTexts()).join(' ');
    report.check(said.includes('Read') && said.includes('Allowed') && said.includes('Do'), `booking in: ${why} for the hour meter: refused with read, allowed and do`, said || hand.page.url());
    report.check(!/entries\[|hour_meter|min\b/.test(said), 'and in hours, without a name of the program', said);
    if (!hand.page.url().endsWith('/book')) return;
  }
  report.same((await server.get('/api/jobs')).jobs.length, jobs, 'booking in: nothing is saved');
}
