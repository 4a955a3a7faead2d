// shop.mjs: gauges and stock by taps: a gauge that comes in, a certificate that cannot be and one that holds, pieces received,
// counted and scrapped, a least; what was noted stays to be read. The open forms are looked at like every screen.
import { Hand, sizes } from '../lib/hand.mjs';
import { checkLook } from './looks.mjs';

const day = (offset) => new Date(Date.now() + offset * 86_400_000).toISOString().slice(0, 10);

export async function shop(report, browser, server) {
  const { people } = await server.get('/api/people');
  const by = (role) => people.find((one) => one.role === role).id;
  for (const size of Object.keys(sizes)) {
    const of = report.named(size);
    const hand = await Hand.at(browser, server.base, size, { person: by('lead') });
    hand.expected = /422/;  // The refusals themselves.
    try {
      await of.part('gauges', () => gauges(of, hand, server, size));
      await of.part('stock', () => stock(of, hand, server, size));
      of.same(hand.complaints, [], 'the browser complains of nothing else');
    } finally {
      await hand.context.close();
    }
  }
  const hand = await Hand.at(browser, server.base, 'tablet', { person: by('bench') });
  try {
    await hand.go('/gauges');
    await hand.tap(hand.page.getByRole('button', { name: 'Add a gauge', exact: true }));
    report.same(await hand.page.locator('form').count(), 0, 'the bench is asked to let the lead answer for gauges');
    report.check((await hand.page.locator('main').innerText()).includes('The lead answers for gauges'), 'and is told why');
  } finally {
    await hand.context.close();
  }
}

const put = (hand, label, value) => hand.page.getByLabel(label, { exact: true }).fill(value);
const refusal = (hand) => hand.page.locator('.refusal').innerText().catch(() => '');
const notes = (server, id) => server.get('/api/gauges').then((view) => view.gauges.find((one) => one.id === id)?.notes ?? []);

async function gauges(report, hand, server, size) {
  const name = `DI-${size}`;
  await hand.go('/gauges');
  await hand.tap(hand.page.getByRole('button', { name: 'Add a gauge', exact: true }));
  await put(hand, 'Name on its label', name);
  await put(hand, 'Reads to', '0.01 mm');
  await put(hand, 'U (k = 2)', '0.02 mm');
  await put(hand, 'Day of calibration', day(-10));
  await put(hand, 'Due', day(5));
  await put(hand, 'Calibrated by', 'A laboratory');
  await put(hand, 'Certificate: number, place, remarks', 'No. 7');
  await checkLook(report, hand, size, 'adding a gauge');
  await hand.tap(hand.page.getByRole('button', { name: 'Keep', exact: true }));
  const line = hand.page.locator('.line', { hasText: name });
  report.check((await line.innerText()).includes('due in 5 days'), 'a gauge that soon runs out says when', await line.innerText());
  report.same(await line.locator('svg.sign.waits').count(), 1, 'and shows it by a shape');

  await hand.tap(line);
  await hand.tap(hand.page.locator('section.more').getByRole('button', { name: 'Note a calibration', exact: true }));
  const certificate = async (from, until) => {
    await put(hand, 'U (k = 2)', '0.015 mm');
    await put(hand, 'Day of calibration', from);
    await put(hand, 'Due', until);
    await put(hand, 'Calibrated by', 'Another laboratory');
    await hand.tap(hand.page.getByRole('button', { name: 'Keep', exact: true }));
  };
  await certificate(day(40), day(400));
  report.check(/still to come/.test(await refusal(hand)), 'a day to come is refused beside it', await refusal(hand));
  await certificate(day(-20), day(400));
  report.check(/before the last calibration/.test(await refusal(hand)), 'an older certificate does not take the place of a newer', await refusal(hand));
  report.same((await notes(server, name)).length, 1, 'nothing of these is kept');
  await checkLook(report, hand, size, 'noting a calibration');
  await certificate(day(-1), day(400));
  const kept = await notes(server, name);
  report.same(kept.map((note) => note.who), ['Another laboratory', 'A laboratory'], 'both stand to be read, the newer first');
  report.check((await hand.page.locator('.line', { hasText: name }).innerText()).includes('in date'), 'the newer holds');
  const history = await hand.page.locator('section.more').innerText();
  report.check(history.includes('A laboratory. No. 7') && history.includes('Another laboratory'), 'the page shows both', history);
  await checkLook(report, hand, size, 'certificates of a gauge');
}

async function stock(report, hand, server, size) {
  const part = async () => (await server.get('/api/stock')).stock.find((row) => row.part_number === 'TH-RING-100');
  const before = await part();
  await hand.go('/stock');
  const line = hand.page.locator('.line', { hasText: 'TH-RING-100' });
  const move = async (reason, label, count) => {
    await hand.tap(hand.page.locator('section.more').getByRole('button', { name: reason, exact: true }));
    await put(hand, label, count);
    await hand.tap(hand.page.locator('section.more').getByRole('button', { name: 'Keep', exact: true }));
  };
  await hand.tap(line);
  await move('Received', 'How many came', '5');
  report.same((await part()).on_shelf, before.on_shelf + 5, 'what came lies on the shelf');
  await move('Counted', 'How many lie there', '3');
  report.same((await part()).on_shelf, 3, 'a count says how many lie there');
  await move('Scrapped', 'How many went to scrap', '9');
  report.check(/at most 3/.test(await refusal(hand)), 'no more can be scrapped than lie there', await refusal(hand));
  await checkLook(report, hand, size, 'a part');
  await hand.go('/stock');
  await hand.tap(line);
  await move('Scrapped', 'How many went to scrap', '1');
  await hand.tap(hand.page.locator('section.more').getByRole('button', { name: 'Name and least', exact: true }));
  await put(hand, 'How many should always lie there', '25');
  await hand.tap(hand.page.locator('section.more').getByRole('button', { name: 'Keep', exact: true }));
  report.check((await line.innerText()).includes('short for the jobs open'), 'what jobs lack is said in words', await line.innerText());
  await move('Counted', 'How many lie there', '20');
  report.check((await line.innerText()).includes('below its least of 25'), 'below its least is said in words', await line.innerText());
  report.same(await line.locator('svg.sign').count(), 1, 'and by a shape');
  const moves = await hand.page.locator('.moves').innerText();
  report.check(['received', 'counted', 'scrapped'].every((reason) => moves.includes(reason)), 'every move stands with its reason', moves.slice(0, 200));
  await checkLook(report, hand, size, 'stock with its moves');
  await move('Counted', 'How many lie there', String(before.on_shelf));
  await hand.tap(hand.page.locator('section.more').getByRole('button', { name: 'Name and least', exact: true }));
  await put(hand, 'How many should always lie there', String(before.least));
  await hand.tap(hand.page.locator('section.more').getByRole('button', { name: 'Keep', exact: true }));
}
