// study.mjs: ways of one shaft side by side: reached from the machine, read along a plot by finger and by key, ways changed, added
// and taken out in place, what cannot be said beside its field; the files; the lead's part.
import { Hand, sizes } from '../lib/hand.mjs';
import { gallery } from '../lib/pictures.mjs';
import { checkLook } from './looks.mjs';

const flat = (text) => text.replace(/\s+/g, ' ').trim();

export async function study(report, browser, server) {
  const { people } = await server.get('/api/people');
  const person = (role) => people.find((one) => one.role === role).id;
  for (const size of Object.keys(sizes)) {
    const of = report.named(size);
    const hand = await Hand.at(browser, server.base, size, { person: person('bench') });
    hand.expected = /422/;  // The refusals themselves.
    try {
      await of.part('from the machine', () => reached(of, hand, server, size));
      await of.part('the ways', () => ways(of, hand, size));
      await of.part('along a plot', () => plot(of, hand));
      await of.part('other ways', () => change(of, hand, size));
      await of.part('stated errors', () => errors(of, hand));
      await of.part('files', () => files(of, hand, server));
      of.same([...hand.small], [], 'every key tapped is 48 px or more each way');
      of.same(hand.complaints, [], 'the browser complains of nothing else');
    } finally {
      await hand.context.close();
    }
  }
  await report.part('whose choice it is', () => asks(report, browser, server, person));
}

const five = async (server) => (await server.get('/api/machines')).machines.find((one) => one.name === 'Orchard loosener');
const columns = (hand) => hand.page.locator('th[scope=col]:not(.first), section.way');
const names = async (hand) => (await columns(hand).locator('.label').allInnerTexts()).map(flat);
const refusal = (hand) => hand.page.locator('form .refusal').allInnerTexts().then((texts) => flat(texts.join(' ')));

async function reached(report, hand, server, size) {
  await hand.go(`/machine/${(await five(server)).id}`);
  await hand.tap('Study other ways');
  await hand.page.locator('.ways').waitFor();
  await hand.quiet();
  report.check(/\/study\//.test(hand.page.url()), 'a study is one tap from the machine', hand.page.url());
  await checkLook(report, hand, size, 'a study');
  await gallery(size)?.(hand, 'study');
}

async function ways(report, hand) {
  const shown = await names(hand);
  report.check(shown.length >= 2, 'two ways at least stand side by side', shown.join(', '));
  const framed = hand.page.locator('th.advised, section.way.advised');
  const badge = await framed.count() ? flat(await framed.first().innerText()) : '';
  report.check(await framed.count() <= 1, 'at most one stands in the heavy frame', badge);
  const opens = hand.page.locator('.cell .opens').first();
  await hand.tap(opens);
  report.same(await hand.page.locator('.ways .slip').count(), 1, 'a figure opens its working in place');
  await hand.tap(opens);
  report.same(await hand.page.locator('.ways .slip').count(), 0, 'and closes it');
}

async function plot(report, hand) {
  const area = hand.page.getByRole('slider').first();
  const said = hand.page.locator('figure.plot').first().locator('.said');
  await area.scrollIntoViewIfNeeded();
  const box = await area.boundingBox();
  const press = async (share) => {
    const at = { x: box.width * share, y: box.height / 2 };
    if (hand.touch) await area.tap({ position: at });
    else await area.click({ position: at });
    return flat(await said.innerText());
  };
  const [least, most] = [Number(await area.getAttribute('aria-valuemin')), Number(await area.getAttribute('aria-valuemax'))];
  const middle = await press(0.5);
  const now = Number(await area.getAttribute('aria-valuenow'));
  report.check(Math.abs(now - (least + most) / 2) < 0.02 * (most - least), 'a tap half way along reads half way along', `${now} of ${least} to ${most}`);
  report.check(/\d/.test(middle), 'and the figures stand below', middle);
  report.check((await area.getAttribute('aria-valuetext')).length > 5, 'they are said aloud too');
  const later = await press(0.8);
  report.check(later !== middle, 'another place reads otherwise', later);
  await area.focus();
  const before = Number(await area.getAttribute('aria-valuenow'));
  await hand.page.keyboard.press('ArrowRight');
  const after = Number(await area.getAttribute('aria-valuenow'));
  report.check(after > before, 'the arrow key goes along', `${before} ${after}`);
  await hand.page.keyboard.press('Home');
  report.check(Math.abs(Number(await area.getAttribute('aria-valuenow')) - least) < 1e-6 * Math.max(1, most), 'Home goes to its beginning');
}

async function change(report, hand, size) {
  const before = await names(hand);
  await hand.tap(hand.page.getByRole('button', { name: /^Change / }).first());
  const form = hand.page.locator('.ways form');
  const put = (label, value) => hand.page.locator('form').getByLabel(label, { exact: true }).fill(value);
  await checkLook(report, hand, size, 'changing a way');
  await put('Name', 'Slower');
  await put('Speed', '480 furlongs');
  await hand.tap('Work it out');
  report.check(/furlongs/.test(await refusal(hand)), 'what cannot be read is said beside its field', await refusal(hand));
  report.same(await form.locator('[aria-invalid=true]').count(), 1, 'the one field is marked');
  report.same(await names(hand), before, 'and nothing has changed meanwhile');
  await put('Speed', '300 /min');
  await hand.tap('Work it out');
  report.same(await names(hand), ['Slower', ...before.slice(1)], 'a way is changed in its own column');
  await hand.page.reload();
  await hand.quiet();
  report.same(await names(hand), ['Slower', ...before.slice(1)], 'the address keeps the ways');

  await hand.tap('Add a way');
  await put('Name', 'Flatter');
  await put('Lean', '3°');
  await hand.tap('Work it out');
  report.same(await names(hand), ['Slower', ...before.slice(1), 'Flatter'], 'a way is added');
  await hand.tap(hand.page.getByRole('button', { name: 'Change Slower' }));
  await hand.tap('Take this way out');
  report.same(await names(hand), [...before.slice(1), 'Flatter'], 'and one is taken out');
}

/** What is stated makes the floor; what cannot be read is said beside its field. */
async function errors(report, hand) {
  const form = hand.page.getByRole('form', { name: 'Stated errors: they make the floor' });
  const field = form.getByLabel('Error of mass, inertia and lean', { exact: true });
  const note = () => hand.page.locator('.notes').innerText().then(flat);
  const before = await note();
  await field.fill('3 furlongs');
  await hand.tap(form.getByRole('button', { name: 'Use these errors' }));
  report.check(/furlongs/.test(flat(await form.innerText())), 'an error that cannot be read is said beside its field');
  report.same(await note(), before, 'and nothing has changed meanwhile');
  await field.fill('3 %');
  await hand.tap(form.getByRole('button', { name: 'Use these errors' }));
  await hand.quiet();
  report.check(/errors that this study states/.test(await note()) && /3/.test(await note()), 'what is stated makes the floor', await note());
  await hand.page.reload();
  await hand.quiet();
  report.check(/errors that this study states/.test(await note()), 'the address keeps it');
}

async function files(report, hand, server) {
  const get = async (link) => {
    const reply = await fetch(new URL(await link.getAttribute('href'), server.base));
    return { status: reply.status, type: reply.headers.get('content-type'), bytes: Buffer.from(await reply.arrayBuffer()) };
  };
  const figure = hand.page.locator('figure.plot').first();
  const csv = await get(figure.getByRole('link', { name: /^CSV/ }));
  report.check(csv.status === 200 && /text\/csv/.test(csv.type) && csv.bytes.toString().split('\n').length > 5, 'a plot gives its numbers', `${csv.status} ${csv.type}`);
  const svg = await get(figure.getByRole('link', { name: /^SVG/ }));
  report.check(svg.status === 200 && svg.bytes.toString().includes('<svg'), 'and its picture', `${svg.status} ${svg.type}`);
  const table = await get(hand.page.getByRole('link', { name: 'Table as CSV' }));
  report.check(table.status === 200 && table.bytes.toString().includes('Flatter'), 'the table as numbers holds the ways that are shown', `${table.status}`);
  for (const paper of ['PDF, A4', 'PDF, Letter']) {
    const pdf = await get(hand.page.getByRole('link', { name: paper }));
    report.check(pdf.status === 200 && pdf.bytes.subarray(0, 5).toString() === '%PDF-', paper, `${pdf.status} ${pdf.type}`);
  }
}

async function asks(report, browser, server, person) {
  const shaft = (await server.get('/api/shafts')).shafts.find((one) => /five/.test(one.name));
  const view = await server.get(`/api/shafts/${shaft.id}/study`);
  for (const role of ['bench', 'lead']) {
    const hand = await Hand.at(browser, server.base, 'tablet', { person: person(role) });
    try {
      await hand.go(`/study/${shaft.id}`);
      report.check(flat(await hand.nextLine()).startsWith(flat(view.finding.does)), `${role}: the line says what to do`, await hand.nextLine());
      const key = hand.page.locator('footer.next').getByRole('button', { name: 'Ask the lead' });
      report.same(await key.count(), view.finding.lines === undefined ? 0 : 1, `${role}: a change of the definition is asked for, and only that`);
      if (view.finding.lines === undefined) continue;
      await hand.tap(key);
      report.check(flat(await hand.page.locator('main').innerText()).includes(flat(view.finding.lines)), `${role}: the lines to write are shown`);
      report.same(await hand.page.getByRole('link', { name: 'Open the definition' }).count(), role === 'lead' ? 1 : 0, `${role}: ${role === 'lead' ? 'opens' : 'does not open'} the definition from here`);
    } finally {
      await hand.context.close();
    }
  }
}
