// run.mjs: the page in a real browser, against a server of its own. Answers in lines 'ok WHAT' and 'not ok WHAT: why'.
//   node e2e/run.mjs [SUITE...]     job ways half_done rebuilds photo two killed offline input shop machine study letin looks; all of them without a name
// FLATWISE_PROGRAM: the program; FLATWISE_WEB_ROOT: the page from there and not the one compiled in;
// FLATWISE_WRITE_PAGES=1: pictures go to docs/pictures/page.
import { launch, sizes } from './lib/hand.mjs';
import { gallery } from './lib/pictures.mjs';
import { Report } from './lib/report.mjs';
import { Server } from './lib/server.mjs';

const suites = {
  job: async (report, browser, server) => {
    const { wholeJob } = await import('./suites/job.mjs');
    for (const size of process.env['FLATWISE_SIZES']?.split(',') ?? Object.keys(sizes)) {
      const of = report.named(size);
      await of.part('the whole job', () => wholeJob(of, browser, server, size, gallery(size)));
    }
  },
  ways: async (report, browser, server) => {
    const { threeWays } = await import('./suites/ways.mjs');
    await threeWays(report, browser, server);
  },
  half_done: async (report, browser) => {
    const { halfDone } = await import('./suites/half_done.mjs');
    await halfDone(report, browser);
  },
  rebuilds: async (report, browser) => {
    const { rebuilds } = await import('./suites/rebuilds.mjs');
    await rebuilds(report, browser);
  },
  photo: async (report, browser, server) => {
    const { photo } = await import('./suites/photo.mjs');
    await photo(report, browser, server);
  },
  two: async (report, browser, server) => {
    const { twoTablets } = await import('./suites/two.mjs');
    await twoTablets(report, browser, server);
  },
  killed: async (report, browser, server) => {
    const { killedServer } = await import('./suites/two.mjs');
    await killedServer(report, browser, server);
  },
  offline: async (report, browser, server) => {
    const { offline } = await import('./suites/two.mjs');
    await offline(report, browser, server);
  },
  input: async (report, browser, server) => {
    const { badInput } = await import('./suites/input.mjs');
    await badInput(report, browser, server);
  },
  shop: async (report, browser, server) => {
    const { shop } = await import('./suites/shop.mjs');
    await shop(report, browser, server);
  },
  machine: async (report, browser) => {
    const { machine } = await import('./suites/machine.mjs');
    await machine(report, browser);
  },
  study: async (report, browser, server) => {
    const { study } = await import('./suites/study.mjs');
    await study(report, browser, server);
  },
  letin: async (report, browser) => {
    const { letIn } = await import('./suites/letin.mjs');
    await letIn(report, browser);
  },
  looks: async (report, browser, server) => {
    const { firstLoad, looks, otherLooks, soon } = await import('./suites/looks.mjs');
    await firstLoad(report, browser, server);
    await report.part('how soon a tap shows', () => soon(report, browser, server));
    await looks(report, browser, server);
    await report.part('other jobs, an empty workshop', () => otherLooks(report, browser, server));
  },
};

const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !(name in suites));
if (unknown.length) {
  console.error(`no such suite: ${unknown.join(' ')}; there are ${Object.keys(suites).join(' ')}`);
  process.exit(2);
}
const report = new Report();
const browser = await launch();
let server;
try {
  server = await Server.start();
  for (const name of asked.length ? asked : Object.keys(suites)) {
    const of = report.named(name);
    await of.part('runs to its end', () => suites[name](of, browser, server));
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
