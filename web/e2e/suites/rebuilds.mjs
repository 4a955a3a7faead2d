// rebuilds.mjs: simulated rebuilds with known mistakes (tests/rebuilds) told to the page by taps; then the record says what the
// simulator promises, the same as of the readings file, and every finding stands where the hand looks for it.
import { spawnSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { Hand } from '../lib/hand.mjs';
import { Player } from '../lib/player.mjs';
import { build, Server } from '../lib/server.mjs';
import { shop } from '../lib/shop.mjs';

const program = process.env['FLATWISE_REBUILDS'] ?? join(build, 'release/tests/rebuilds/rebuild_entries');
/** Eleven, small enough to be tapped: two with nothing wrong, one with several mistakes, one whose run shakes, else a kind each. */
const seeds = process.env['FLATWISE_SEEDS']?.split(',') ?? ['80', '111', '79', '112', '123', '143', '15', '38', '66', '77', '194'];
const atOnce = 3;
const flat = (text) => text.replace(/[\s\u00a0\u202f]+/g, ' ').trim();

function rebuildsOf(all) {
  const run = spawnSync(program, all, { encoding: 'utf8', maxBuffer: 2 ** 28 });
  if (run.status !== 0) throw new Error(`${program}: ${run.stderr || run.error}`);
  return run.stdout.trim().split('\n').map((line) => JSON.parse(line));
}

/** The device's clock stands on the day of the rebuild: gauges are past their date by it. */
const onTheDay = (page, date) => page.addInitScript((day) => {
  const Real = Date;
  const shift = Real.parse(`${day}T12:00:00Z`) - Real.now();
  window.Date = class extends Real {
    constructor(...given) { super(...(given.length ? given : [Real.now() + shift])); }
    static now() { return Real.now() + shift; }
  };
}, date);

/** The page leads, and asks more than a readings file has place for: those questions are answered yes where they stand. */
async function reportOf(player, rebuild) {
  const report = async () => (await player.server.get(`/api/jobs/${player.job}/report`)).stages.map(({ stage, findings }) => ({ stage, findings }));
  const open = (stages) => stages.flatMap(({ stage, findings }) => findings.filter((one) => one.code === 'job.unanswered').map((one) => ({ stage, finding: one })));
  const known = new Set(open(rebuild.stages).map(({ stage, finding }) => `${stage} ${finding.says}`));
  const places = new Map();
  for (const { stage, finding } of open(await report())) {
    if (known.has(`${stage} ${finding.says}`)) continue;
    const place = { stage, station: stationOf((await player.view({ stage })).strip, finding) };
    places.set(JSON.stringify(place), place);
  }
  const asked = rebuild.entries.map((one) => one.body).filter((body) => body.kind === 'answered');
  const forgotten = new Set(open(rebuild.stages).map(({ finding }) => JSON.stringify(finding.args.question)));
  await player.answerOpen(places.values(), (body) => [...forgotten].some((question) => question.includes(body.question)) || asked.some((one) => one.question === body.question && one.number === body.number));
  return report();
}

/** What stands on the page at a place. */
async function shownAt(player, place) {
  await player.goTo(place);
  return flat(await player.page.locator('main').innerText()).toLowerCase();
}

/** Where on the strip a finding is looked for: its rotor, its nut, its station; nowhere in particular for the whole shaft. */
function stationOf(strip, { where, says }) {
  const named = (kind, test) => strip.stations.find((one) => one.kind === kind && test(one.name))?.index;
  if (where?.rotor) return named('rotor', (name) => name === String(where.rotor));
  if (where?.station) return where.station - 1;
  const nut = /nut (?:at end )?([AB])\b/i.exec(says)?.[1];
  return nut && named('nut', (name) => name.endsWith(nut));
}

/** A long sentence stands in pieces on the release sheet: the part, what is wrong, the rest. */
const inPieces = (says) => flat(says).toLowerCase().split(/[:.;] ?/).filter((piece) => piece.length > 3);

/** The findings that a person at their stage and part is not told, nor on the sheet that lists what keeps the job from release. */
export async function notShown(player, stages) {
  const seen = new Map();
  const shown = async (place) => {
    const key = JSON.stringify(place);
    if (!seen.has(key)) seen.set(key, await shownAt(player, place));
    return seen.get(key);
  };
  const missing = [];
  for (const { stage, findings } of stages)
    for (const finding of findings.filter((one) => one.severity !== 'note')) {
      const { strip } = await player.view({ stage });
      // The sheet of a part names it in its head, and no more in each sentence.
      const says = flat(finding.says).toLowerCase().replace(/^rotor \d+: /, '');
      if ((await shown({ stage, station: stationOf(strip, finding) })).includes(says)) continue;
      // A question that is open stands there as the question it is; what holds the release back says that it is not answered.
      const listed = finding.severity === 'unanswered' ? await shown({ stage: 'release' }) : '';
      if (!listed || !inPieces(finding.says).every((piece) => listed.includes(piece))) missing.push(`${stage} ${JSON.stringify(finding.where)} ${finding.code}: ${finding.says}`);
    }
  return missing;
}

/** A finding that does not come through to the page must be missed: else none of this would notice. */
async function hiddenIsMissed(report, player, stages) {
  const hidden = stages.flatMap((stage) => stage.findings).find((one) => one.severity !== 'note');
  await player.page.route(/\/bench\?/, async (route) => {
    const reply = await route.fetch();
    await route.fulfill({ response: reply, body: (await reply.text()).replaceAll(JSON.stringify(hidden.says.replace(/^Rotor \d+: /, '')).slice(1, -1), 'All is well.') });
  });
  await player.page.reload();
  const missing = await notShown(player, stages);
  await player.page.unroute(/\/bench\?/);
  report.check(missing.some((line) => line.includes(hidden.says)), 'a finding hidden from the page is missed', () => hidden.says);
  const changed = structuredClone(stages);
  changed.find((stage) => stage.findings.includes(hidden) || stage.findings.some((one) => one.says === hidden.says)).findings.pop();
  report.check(differences(stages, changed).length > 0, 'a finding that the record lacks is missed');
}

async function bookIn(hand) {
  await hand.go('/book');
  await hand.option('Machine', 'Simulated');
  await hand.tap(hand.page.locator('footer').getByRole('button', { name: 'Book in' }));
  await hand.page.waitForURL(/\/job\//);
  await hand.quiet();
  return /\/job\/([\w-]+)/.exec(hand.page.url())[1];
}

async function one(report, browser, rebuild, tally) {
  const folder = shop(rebuild);
  const server = await Server.start({ demo: folder });
  const person = (await server.get('/api/people')).people.find((who) => who.role === 'lead').id;
  const hand = await Hand.at(browser, server.base, 'wide', { person, units: 'metric' });
  hand.haste = true;
  await onTheDay(hand.page, rebuild.date);
  hand.expected = /422/;
  try {
    const player = new Player(hand, server, await bookIn(hand), person);
    const from = Date.now();
    await player.playAll(rebuild);
    report.same(player.refusals, [], 'the page keeps every reading');
    const said = await reportOf(player, rebuild);
    tally.taps += hand.taps;
    const apart = differences(rebuild.stages, said);
    report.same(apart, [], 'the record says what is said of the readings file');
    for (const mistake of rebuild.mistakes) {
      tally.put += 1;
      tally.caught += mistake.caught || mistake.cannot_tell ? 1 : 0;
      report.check(mistake.promised < 1 ? mistake.caught || mistake.cannot_tell : mistake.caught && mistake.named, `${mistake.told}: caught and named`, () => JSON.stringify(mistake));
    }
    report.same(await notShown(player, said), [], 'every finding stands on the page where its part is');
    if (rebuild.planted) await hiddenIsMissed(report, player, said);
    report.same(hand.complaints, [], 'the browser complains of nothing');
    report.figure(`seconds, taps, entries`, `${((Date.now() - from) / 1000).toFixed(1)}, ${hand.taps}, ${rebuild.entries.length}`);
  } finally {
    await hand.context.close();
    await server.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Findings of one report that the other lacks, in words. */
export function differences(wanted, found) {
  // Only the record moves the stock: a readings file cannot know that its shelf ran empty.
  const said = (findings) => findings.filter((f) => f.code !== 'kit.shelf_below_nought');
  const lines = (stages) => stages.flatMap(({ stage, findings }) => said(findings).map((f) => `${stage} ${f.code} ${JSON.stringify(f.where)} ${f.severity}: ${f.says} ${f.do?.says ?? ''}`));
  const [a, b] = [lines(wanted), lines(found)];
  return [...a.filter((line) => !b.includes(line)).map((line) => `not said: ${line}`), ...b.filter((line) => !a.includes(line)).map((line) => `said too: ${line}`)];
}

export async function rebuilds(report, browser) {
  const waiting = rebuildsOf(seeds);
  const wrong = waiting.find((rebuild) => rebuild.mistakes.length > 0);
  if (wrong) wrong.planted = true;
  const tally = { taps: 0, put: 0, caught: 0 };
  const work = async () => {
    for (let rebuild = waiting.shift(); rebuild; rebuild = waiting.shift()) {
      const of = report.named(`rebuild ${rebuild.seed}`);
      const mine = rebuild;
      await of.part('told to the page', () => one(of, browser, mine, tally));
    }
  };
  await Promise.all(Array.from({ length: atOnce }, work));
  report.figure('mistakes put in, caught, taps', `${tally.put}, ${tally.caught}, ${tally.taps}`);
}
