// looks.mjs: every screen and stage at every size and theme: axe-core, targets, width, cut text, policy; first load; how soon a tap shows.
import { createRequire } from 'node:module';
import { readFileSync, rmSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { freshId, put, tell } from '../lib/api.mjs';
import { Hand, sizes } from '../lib/hand.mjs';
import { Server } from '../lib/server.mjs';
import { shop } from '../lib/shop.mjs';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const stages = ['booking_in', 'finding', 'plan', 'teardown', 'inspection', 'kit', 'press', 'timing', 'stack', 'torque', 'test_run', 'release'];

async function screens(server, more = []) {
  const { jobs } = await server.get('/api/jobs');
  const { machines } = await server.get('/api/machines');
  const { shafts } = await server.get('/api/shafts');
  const half = jobs.find((job) => job.number === '31');
  return [
    ['start', '/'], ['board', '/board'], ['wall', '/wall'], ['machines', '/machines'], ['machine', `/machine/${machines[0].id}`], ['shafts', '/shafts'],
    ['shaft', `/shaft/${shafts[0].id}`], ['copy of a shaft', `/shaft/${shafts[0].id}/copy`], ['people', '/people'], ['book in', '/book'], ['gauges', '/gauges'], ['stock', '/stock'], ['figures', '/figures'], ['tablets', '/tablets'],
    ...stages.map((stage) => [stage, `/job/${half.id}?stage=${stage}`]),
    ['a rotor from end B', `/job/${half.id}?stage=timing&from=b`], ...more,
  ];
}

/** axe, in the page's own world: the policy lets no script in, the debugger's evaluation is none. */
async function violations(page, rules) {
  await page.evaluate(axe);
  return page.evaluate(async (only) => {
    const found = await window.axe.run(document, { resultTypes: ['violations'], ...(only ? { runOnly: { type: 'rule', values: only } } : {}) });
    return found.violations.map((v) => `${v.id}: ${v.nodes.slice(0, 3).map((n) => `${n.target.join(' ')} (${n.failureSummary?.split('\n')[1]?.trim().slice(0, 110) ?? ''})`).join('; ')}`);
  }, rules);
}

/** Keys that are too small, what is wider than the screen, and text that is cut. */
const measure = (page) => page.evaluate(() => {
  const name = (e) => `${e.tagName.toLowerCase()}.${(e.getAttribute('class') ?? '').split(' ')[0]} "${(e.getAttribute('aria-label') ?? e.textContent ?? '').trim().replace(/\s+/g, ' ').slice(0, 40)}"`;
  const seen = (e) => e.checkVisibility?.({ visibilityProperty: true, opacityProperty: true }) ?? true;
  const small = [];
  for (const e of document.querySelectorAll('button, a[href], select, textarea, input:not(.aloud), [role="button"], label.key')) {
    if (!seen(e)) continue;
    const box = e.getBoundingClientRect();
    if (box.width > 0 && (box.width < 47.5 || box.height < 47.5)) small.push(`${name(e)} ${Math.round(box.width)}×${Math.round(box.height)}`);
  }
  const cut = [];
  for (const e of document.querySelectorAll('body *')) {
    if (!(e instanceof HTMLElement) || !seen(e) || e.closest('.aloud') || e.children.length > 0 || !e.textContent.trim()) continue;
    const style = getComputedStyle(e);
    if (style.overflowX !== 'visible' && (e.scrollWidth > e.clientWidth + 1)) cut.push(name(e));
    const box = e.closest('.cell.top, .cell.bottom, .cell.row');
    if (box && !e.classList.contains('aloud')) {
      const [a, b] = [e.getBoundingClientRect(), box.getBoundingClientRect()];
      if (a.width > b.width + 1 || a.bottom > b.bottom + 1) cut.push(`${name(e)} in ${name(box)}`);
    }
  }
  return { wide: document.documentElement.scrollWidth - innerWidth, small, cut };
});

export async function allLooks(report, browser, server) {
  await firstLoad(report, browser, server);
  await report.part('how soon a tap shows', () => soon(report, browser, server));
  await looks(report, browser, server);
  await report.part('other jobs, an empty workshop', () => otherLooks(report, browser, server));
}

export async function looks(report, browser, server, more) {
  const all = await screens(server, more);
  const person = (await server.get('/api/people')).people.find((one) => one.role === 'lead').id;
  // The wall is looked at from afar and has nothing to press.
  for (const size of Object.keys(sizes)) await lookAt(report, browser, server, size, all.filter(([name]) => name !== 'wall' || size === 'wide'), person);
}

async function lookAt(report, browser, server, size, all, person) {
  const hand = await Hand.at(browser, server.base, size, { person });
  try {
    for (const [name, path] of all) await report.part(`${size}: ${name}`, () => look(report, hand, size, name, path));
    report.same([...new Set(hand.complaints)], [], `${size}: the browser complains of nothing, the policy is kept`);
  } finally {
    await hand.context.close();
  }
}

async function look(report, hand, size, name, path) {
  await hand.go(path);
  await checkLook(report, hand, size, name);
}

/** What is shown now: axe in every theme, keys, width, cut text. */
export async function checkLook(report, hand, size, name) {
  const found = await violations(hand.page);
  for (const theme of ['dark', 'sun']) {
    await hand.page.evaluate((to) => { document.documentElement.dataset['theme'] = to; }, theme);
    found.push(...(await violations(hand.page, ['color-contrast'])).map((text) => `${theme} ${text}`));
  }
  await hand.page.evaluate(() => { document.documentElement.dataset['theme'] = 'light'; });
  const { wide, small, cut } = await measure(hand.page);
  report.same(found, [], `${size}: ${name}: axe finds nothing in any theme`);
  // Lines of a text stand close on a wide screen, where there is a mouse; they are no keys there.
  const keys = size === 'wide' ? small.filter((one) => !/^input\S* "Line \d+"/.test(one)) : small;
  report.same(keys, [], `${size}: ${name}: every key is 48 px each way`);
  report.check(wide <= 0, `${size}: ${name}: nothing is wider than the screen`, `${wide} px`);
  report.same(cut, [], `${size}: ${name}: no text is cut`);
}

export async function firstLoad(report, browser, server) {
  const half = (await server.get('/api/jobs')).jobs.find((job) => job.number === '31');
  const hand = await Hand.at(browser, server.base, 'tablet');
  const bytes = { page: 0, fonts: 0, data: 0 };
  try {
    const replies = [];
    hand.page.on('response', (reply) => replies.push(reply));
    await hand.go(`/job/${half.id}`);
    for (const reply of replies) {
      if (/\/api\/events|sw\.js/.test(reply.url())) continue;
      const body = await reply.body().catch(() => Buffer.alloc(0));
      const kind = /\/api\//.test(reply.url()) ? 'data' : /\.woff2/.test(reply.url()) ? 'fonts' : 'page';
      bytes[kind] += kind === 'fonts' ? body.length : gzipSync(body, { level: 6 }).length;
    }
    report.figure('first load of the demo job, gzip bytes', `page ${bytes.page}, data ${bytes.data}, fonts ${bytes.fonts}`);
    report.check(bytes.page > 1000 && bytes.page <= 120_000, 'the page itself is at most 120 kB gzip on first load', bytes.page);
    report.same(hand.complaints, [], 'first load: the browser complains of nothing');
  } finally {
    await hand.context.close();
  }
}

/** Told to the record, or this is no shaft to look at. */
async function told(...what) {
  const { status, json } = await tell(...what);
  if (status !== 201) throw new Error(`${status} ${JSON.stringify(json).slice(0, 600)}`);
}

/** A shaft of 24 rotors, made from the short one: set up by the API, tapped by hand. */
async function longJob(server) {
  const { people } = await server.get('/api/people');
  const { shafts } = await server.get('/api/shafts');
  const three = shafts.find((shaft) => /short three/.test(shaft.name));
  const toml = three.toml.replace(/repeat = 3/, 'repeat = 24').replace(/name = "[^"]*"/, 'name = "Twenty-four, to try the page"');
  const shaft = await put(server, '/api/shafts', { id: freshId(), shaft: freshId(), by: people[0].id, seen: 0, toml });
  const { customers } = await server.get('/api/customers');
  const machine = await put(server, '/api/machines', { id: freshId(), customer: customers[0].id, name: 'Long one, to try the page', shaft: shaft.shaft, invented: true });
  const job = freshId();
  await told(server, job, people[0].id, [{ kind: 'booked_in', number: `24-${job.slice(-4)}`, machine: machine.id, shaft: shaft.id, complaint: 'To see how soon a tap shows.' }]);
  return { job, person: people[0].id };
}

/** The same taken apart, with a mark of every rotor wrong or right, bores read and the long stack measured: every sheet is full. */
async function longJobAtWork(server) {
  const { job, person } = await longJob(server);
  const rotors = Array.from({ length: 24 }, (_, i) => i + 1);
  const safe = ['power_locked_off', 'stored_energy_let_off', 'frame_chocked', 'tines_clear'].map((question) => ({ kind: 'answered', question, number: 0, reply: 'yes' }));
  await told(server, job, person, [...safe, { kind: 'way_chosen', open: rotors, way: 'all' }]);
  const { stations } = (await server.get(`/api/jobs/${job}/bench`)).strip;
  const off = stations.filter((one) => !['shoulder', 'hanger', 'pulley'].includes(one.kind)).map((one) => ({ kind: 'taken_off', station: one.index + 1 }));
  await told(server, job, person, off);
  await told(server, job, person, rotors.flatMap((rotor) => [
    { kind: 'mark_seen', rotor, half: 'a', flat: (rotor % 6) + 1 }, { kind: 'mark_seen', rotor, half: 'b', flat: ((rotor + 2) % 6) + 1 },
    ...['A', 'B'].map((plane) => ({ kind: 'bore_read', rotor, plane, direction: 1, directions: 4, diameter: '3.9358 in', gauge: 'BG-1' })),
    { kind: 'pressed', rotor, force: rotor % 5 ? '550 lbf' : '20 lbf', gauge: 'PG-1' },
  ]));
  await told(server, job, person, [{ kind: 'stack_read', length: '4000 mm', gauge: 'BAR-1' }, { kind: 'nut_pulled', nut: 'a', with: 'wrench', shown: '900 ft·lb', gauge: 'TW-1', multiplier: 1 }]);
  return job;
}

/** Screens of the jobs beside 31, each where it has something of its own to show, and of the longest shaft at work. */
async function otherJobs(server) {
  const { jobs } = await server.get('/api/jobs');
  const at = (number, some) => some.map((stage) => [`job ${number}, ${stage}`, `/job/${jobs.find((one) => one.number === number).id}?stage=${stage}`]);
  const long = await longJobAtWork(server);
  return [...at('32', ['booking_in', 'finding', 'plan', 'teardown']), ...at('33', stages.slice(3)), ...at('34', ['booking_in', 'plan', 'inspection', 'release']),
    ...stages.map((stage) => [`24 rotors, ${stage}`, `/job/${long}?stage=${stage}`]), ['board with 24 rotors', '/board']];
}

/** The same looks at a tablet for what the demo's job 31 does not show: other jobs, a long shaft, a workshop that has nothing yet. */
export async function otherLooks(report, browser, server) {
  const person = (await server.get('/api/people')).people.find((one) => one.role === 'lead').id;
  await lookAt(report, browser, server, 'tablet', await otherJobs(server), person);
  const folder = shop();
  const empty = await Server.start({ demo: folder });
  try {
    await lookAt(report.named('empty workshop'), browser, empty, 'tablet', [['start', '/'], ['board', '/board'], ['machines', '/machines'], ['shafts', '/shafts'], ['people', '/people'], ['book in', '/book']]);
  } finally {
    await empty.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

export async function soon(report, browser, server) {
  const { job, person } = await longJob(server);
  const hand = await Hand.at(browser, server.base, 'tablet', { person });
  try {
    await hand.page.addInitScript(() => {
      window.took = [];
      new PerformanceObserver((list) => { for (const e of list.getEntries()) if (e.interactionId) window.took.push(e.duration); }).observe({ type: 'event', durationThreshold: 16, buffered: true });
    });
    await hand.go(`/job/${job}?stage=booking_in`);
    for (const question of ['Power off, locked off', 'Springs and oil let down', 'Frame chocked, shaft safe', 'Tines clear of feet']) await hand.tap(hand.answer(question, 'yes'));
    for (const rotor of ['3', '12', '20', '7']) {
      await hand.tap(hand.station(rotor));
      for (const key of ['1', '.', '6']) await hand.press(key);
      await hand.tap(hand.pad.getByRole('button', { name: 'Keep', exact: true }));
      await hand.tap(hand.key('noisy'));
    }
    await hand.toStage('Time');
    await hand.page.waitForTimeout(300);
    const took = (await hand.page.evaluate(() => window.took)).sort((a, b) => a - b);
    report.figure('interaction to next paint on 24 rotors, ms', took.length ? `p50 ${took[took.length >> 1]}, p98 ${took[Math.floor(took.length * 0.98)]}, greatest ${took.at(-1)} of ${took.length} events over 16 ms` : 'all under 16');
    report.same(hand.complaints, [], '24 rotors: the browser complains of nothing');
  } finally {
    await hand.context.close();
  }
}
