// run.mjs: the page in a real browser, against a server of its own. Answers in lines 'ok WHAT' and 'not ok WHAT: why'.
//   node e2e/run.mjs [SUITE...]     job ways half_done rebuilds photo two killed offline input flow shop machine study letin looks; all of them without a name
// FLATWISE_PROGRAM: the program; FLATWISE_WEB_ROOT: the page from there and not the one compiled in;
// FLATWISE_WRITE_PAGES=1: pictures go to docs/pictures/page.
import { launch } from './lib/hand.mjs';
import { Report } from './lib/report.mjs';
import { Server } from './lib/server.mjs';

/** In the order in which they run: name, file and what it exports, called with report, browser and the server that they share. */
const suites = new Map([
  ['job', 'job', 'everySize'],
  ['ways', 'ways', 'threeWays'],
  ['half_done', 'half_done', 'halfDone'],
  ['rebuilds', 'rebuilds', 'rebuilds'],
  ['photo', 'photo', 'photo'],
  ['two', 'two', 'twoTablets'],
  ['killed', 'two', 'killedServer'],
  ['offline', 'two', 'offline'],
  ['input', 'input', 'badInput'],
  ['flow', 'flow', 'flow'],
  ['shop', 'shop', 'shop'],
  ['machine', 'machine', 'machine'],
  ['study', 'study', 'study'],
  ['letin', 'letin', 'letIn'],
  ['looks', 'looks', 'allLooks'],
].map(([name, file, called]) => [name, async (...given) => (await import(`./suites/${file}.mjs`))[called](...given)]));

const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !suites.has(name));
if (unknown.length) {
  console.error(`no such suite: ${unknown.join(' ')}; there are ${[...suites.keys()].join(' ')}`);
  process.exit(2);
}
const report = new Report();
const browser = await launch();
let server;
try {
  server = await Server.start();
  for (const name of asked.length ? asked : suites.keys()) {
    const of = report.named(name);
    await of.part('runs to its end', () => suites.get(name)(of, browser, server));
  }
} catch (error) {
  report.notOk('a server and a browser', error?.message ?? error);
} finally {
  await browser.close();
  if (server) {
    const ended = await server.stop();
    report.check(ended?.code === 0, 'the server ends cleanly when asked', () => JSON.stringify(ended));
  }
}
process.exitCode = report.failed === 0 ? 0 : 1;
