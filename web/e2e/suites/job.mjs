// job.mjs: one whole job by taps only, from booking in to release, and the paper that is handed over.
import { Hand, sizes } from '../lib/hand.mjs';
import { Mechanic } from '../lib/mechanic.mjs';
import { wordsOf } from '../lib/paper.mjs';
import { gallery } from '../lib/pictures.mjs';

const temperatures = { 'Temperature of the hub': { figure: '68', unit: '°F' }, 'Temperature of the gauge': { figure: '68', unit: '°F' } };
const bores = (readings) => Object.fromEntries(readings.map((reading, i) => [`Plane ${i < 4 ? 'A' : 'B'}, direction ${(i % 4) + 1}`, reading]));
const good = ['3.9358', '3.9358', '3.9359', '3.9358', '3.9358', '3.9357', '3.9358', '3.9358'].map((figure) => ({ figure, unit: 'in' }));

/** Edge loosener, three rotors: rotor 2 came in rough. One reading slips and is corrected, one is read in millimetres. */
export const threeRotors = {
  play: {
    1: { swing: '1/16', unit: 'in', gauge: 'BAR-1' },
    2: { swing: '2.9', unit: 'mm', gauge: 'BAR-1', signs: ['rough', 'noisy'] },
    3: { swing: 'thou:63', unit: 'in', gauge: 'BAR-1', takenBack: ['hot'] },
  },
  inspect: {
    1: { ...bores([{ figure: '3 15/16', unit: 'in', corrected: '3.9358' }, ...good.slice(1)]), ...temperatures },
    2: { ...bores([good[0], { figure: '99.97', unit: 'mm' }, ...good.slice(2)]), ...temperatures },
    3: { ...bores(good), ...temperatures },
  },
  kit: { 'Stamped on half A': '5', 'Stamped on half B': '5' },
  press: { all: '550' },
  marks: { 1: { a: 1, b: 4 }, 2: { a: 3, b: 6, wrong: { b: 5 } }, 3: { a: 5, b: 2 } },
  stack: { figure: '666', unit: 'mm', gauge: 'BAR-1' },
  torque: '225',
  run: { 'How long it ran': { figure: '20' } },
};

async function signOn(hand, name) {
  await hand.go('/');
  const cell = hand.page.locator('header .cells').getByRole('link', { name: /^At the bench/ });
  if (await cell.filter({ visible: true }).count()) await hand.tap(cell);
  else {
    await hand.tap(hand.page.getByRole('button', { name: 'Menu' }));
    await hand.tap(hand.page.locator('nav.menu a[href="/people"]'));
  }
  await hand.tap(hand.page.locator('button.name', { hasText: new RegExp(`^${name}`) }).first());
}

/** Signs on and books the machine in; the address of the job's bench. */
export async function bookIn(hand, machine) {
  await signOn(hand, 'Bench');
  await hand.tap(hand.page.getByRole('button', { name: 'Menu' }));
  await hand.tap(hand.page.locator('nav.menu a[href="/book"]'));
  hand.taps = 0;
  await hand.option('Machine', machine);
  await hand.quiet();
  // A job of it may stand open in the demo.
  if (await hand.key('A second job all the same').count()) await hand.tap('A second job all the same');
  await hand.tap(hand.page.locator('footer').getByRole('button', { name: 'Book in' }));
  await hand.page.waitForURL(/\/job\//);
  await hand.quiet();
  return /\/job\/([\w-]+)/.exec(hand.page.url())[1];
}

/** Opens what the key of the line opens for the printer, and reads it. */
async function paperOf(hand, server) {
  await hand.page.evaluate(() => { window.open = (address) => { window.opened = address; return null; }; });
  await hand.tap(hand.page.locator('footer.next .keys .key').first(), { rest: false });
  const address = await hand.page.evaluate(() => window.opened);
  return wordsOf(await server.get(address, 'bytes'));
}

export async function everySize(report, browser, server) {
  for (const size of process.env['FLATWISE_SIZES']?.split(',') ?? Object.keys(sizes)) {
    const of = report.named(size);
    await of.part('the whole job', () => wholeJob(of, browser, server, size, gallery(size)));
  }
}

export async function wholeJob(report, browser, server, size, picture) {
  const hand = await Hand.at(browser, server.base, size);
  try {
    const job = await bookIn(hand, 'Edge loosener');
    report.check((await hand.text()).includes('Before you touch it'), 'booked in: the questions stand before the first touch');
    const caught = [];
    const mechanic = new Mechanic(hand, threeRotors, {
      picture: (name) => picture?.(hand, name),
      tricks: { wrong: async (m, rotor) => caught.push([rotor, /one flat (out|off)/.test((await hand.sheet.innerText()).replace(/\s+/g, ' ')), (await hand.sheet.innerText()).replace(/\s+/g, ' ').slice(0, 300), await m.line()]) },
    });
    mechanic.people = (await server.get('/api/people')).people;
    const line = await mechanic.follow((text) => /^Released\./.test(text));
    report.check(/^Released\./.test(line), 'from booking in to release by taps only', line);
    report.figure('taps from booking in to release', hand.taps);
    report.check(caught.length === 1 && caught[0][0] === 2 && caught[0][1], 'a mark set wrong is caught at once, and said by how much', () => JSON.stringify(caught));
    const entries = await server.entries(job);
    const marks = entries.filter((e) => e.body.kind === 'mark_seen' && e.body.rotor === 2 && e.body.half === 'b').map((e) => e.body.flat);
    report.same(marks, [5, 6], 'the wrong mark and the right one both stand in the record');
    const looks = entries.filter((e) => e.body.kind === 'second_look');
    const setBy = new Set(entries.filter((e) => e.body.kind === 'mark_seen').map((e) => e.by));
    report.check(looks.length > 0 && looks.every((e) => !setBy.has(e.by)), 'somebody who did not set the mark looked again');
    report.same(entries.filter((e) => e.body.kind === 'signed').map((e) => e.body.as), ['bench', 'lead', 'owner'], 'signed in their order');
    const first = entries.filter((e) => e.body.kind === 'bore_read' && e.body.rotor === 1 && e.body.plane === 'A' && e.body.direction === 1);
    report.same(first.map((e) => e.body.diameter), ['3 15/16 in', '3.9358 in'], 'a reading and its correction are kept as typed');
    report.check(first[1]?.corrects?.includes(first[0]?.id), 'the correction points at what it corrects');
    report.check(entries.some((e) => e.body.diameter === '99.97 mm'), 'a reading in the other unit is kept in it');
    report.check(entries.some((e) => e.body.swing === '0.063 in'), 'thousandths by one key');
    report.check(entries.some((e) => e.body.kind === 'withdrawn'), 'what was taken back is taken back by an entry of its own');
    const paper = await paperOf(hand, server);
    for (const wanted of ['99.97 mm', '3.9358 in', '2.9 mm', '666 mm', '225 ft·lb']) report.check(paper.includes(wanted), `the hand-over record says ${wanted}`, () => paper.slice(0, 400));
    report.check(/3\s*15\/16|3 ?¹⁵⁄₁₆/.test(paper.replace(/\s+/g, ' ')), 'the hand-over record says the reading that was corrected too');
    const chain = (await server.get(`/api/jobs/${job}`)).head;
    report.check(paper.replace(/\s+/g, '').includes(chain), 'the hand-over record says the head of the chain', chain);
    report.same([...hand.small], [], 'every key tapped is 48 px or more each way');
    report.same(hand.complaints, [], 'the browser complains of nothing');
  } finally {
    await hand.context.close();
  }
}
