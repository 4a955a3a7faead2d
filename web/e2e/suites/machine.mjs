// machine.mjs: what a machine's page says of its hours and when it is due again; the scrap box of a tray by taps.
import { Hand, sizes } from '../lib/hand.mjs';
import { Server } from '../lib/server.mjs';
import { checkLook } from './looks.mjs';

const flat = (text) => text.replace(/\s+/g, ' ').trim();

/** On a server of its own: the other suites want job 31 as the demo has it. */
export async function machine(report, browser) {
  const server = await Server.start();
  try {
    for (const size of Object.keys(sizes)) await report.part(`${size}: hours and next due`, () => hours(report.named(size), browser, server, size));
    await report.part('the scrap box', () => scrapBox(report, browser, server));
  } finally {
    await server.stop();
  }
}

async function hours(report, browser, server, size) {
  const { machines } = await server.get('/api/machines');
  const one = machines.find((row) => row.name === 'Alley loosener 2');
  const view = await server.get(`/api/machines/${one.id}`);
  const shaft = (await server.get('/api/shafts')).shafts.find((row) => row.shaft === one.shaft);
  const hand = await Hand.at(browser, server.base, size);
  try {
    await hand.go(`/machine/${one.id}`);
    // Source: the demo's own files: job 28 was the last released, and the definition says after how many hours it is due again.
    const every = Number(/\[service\][^[]*?every\s*=\s*"(\d+) h"/.exec(shaft.toml)[1]);
    const released = Number(/\d+/.exec(view.jobs.find((job) => job.number === '28').hours.replace(/\D/g, ''))[0]);
    const due = hand.page.locator('.facts > div', { hasText: 'Next due' });
    report.same(flat(await due.innerText()).replace(/\D/g, ''), String(released + every), 'next due is the hours of the last release and the interval together');
    const ages = hand.page.locator('.ages li');
    report.same(await ages.count(), 9, 'every rotor has its hours under its column');
    report.same(await ages.locator('.name').allInnerTexts(), ['1', '2', '3', '4', '5', '6', '7', '8', '9'], 'in their order from end A');
    const watch = hand.page.locator('.ages li.watch');
    report.same([await watch.count(), await watch.locator('.name').first().innerText()], [1, '4'], 'the oldest is the one to watch');
    await checkLook(report, hand, size, 'a machine');
    report.same(hand.complaints, [], 'the browser complains of nothing');
  } finally {
    await hand.context.close();
  }
}

async function scrapBox(report, browser, server) {
  const job = (await server.get('/api/jobs')).jobs.find((row) => row.number === '31').id;
  const { people } = await server.get('/api/people');
  const hand = await Hand.at(browser, server.base, 'tablet', { person: people.find((row) => row.name === 'Bench').id });
  const box = hand.page.locator('.block.asks', { hasText: 'Old pieces in the scrap box' });
  const piece = (name) => box.getByRole('group', { name });
  const count = async (name, number) => hand.tap(piece(name).getByRole('button', { name: String(number), exact: true }));
  const says = async () => flat(await hand.sheet.innerText());
  try {
    await hand.go(`/job/${job}?stage=kit`);
    await hand.tap(hand.station('1'));
    report.check(!/lies? in the scrap box/.test(await says()), 'nothing is said of a scrap box that nobody counted');
    await count(/^Adapter-and-bearing set/, 1);
    await count(/^Seal/, 1);
    report.check(/2 old seal came out of rotor 1; one lies in the scrap box/.test(await says()), 'an old seal that lies in no scrap box is said', await says());
    await count(/^Seal/, 2);
    report.check(!/lies? in the scrap box/.test(await says()), 'and is no longer, once it is found');
    const entries = (await server.entries(job)).filter((entry) => entry.body.kind === 'scrapped').map(({ body }) => [body.rotor, body.item, body.count]);
    report.same(entries, [[1, 'set', 1], [1, 'seal', 1], [1, 'seal', 2]], 'each count stands in the record, the corrected one too');
    report.same([...hand.small], [], 'every key tapped is 48 px or more each way');
    report.same(hand.complaints, [], 'the browser complains of nothing');
  } finally {
    await hand.context.close();
  }
}
