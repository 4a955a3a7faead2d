// letin.mjs: a second tablet is let in by the picture that stands at the terminal of the server, a third by the one on the page of the
// second: read as a camera reads them, opened, in.
import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Hand } from '../lib/hand.mjs';
import { program, root } from '../lib/server.mjs';

const pause = (ms) => new Promise((done) => setTimeout(done, ms));

export async function letIn(report, browser) {
  const folder = mkdtempSync(join(tmpdir(), 'flatwise-letin-'));
  // A terminal: without one nobody could scan it, and it is not drawn.
  const page = process.env['FLATWISE_WEB_ROOT'] ? ` --web-root ${process.env['FLATWISE_WEB_ROOT']}` : '';
  const serve = `exec ${program} serve --listen 0.0.0.0 --port 0 --data ${join(folder, 'data')} --demo ${join(root, 'demo')}${page}`;
  const child = spawn('script', ['-qec', serve, '/dev/null'], { stdio: ['pipe', 'pipe', 'ignore'], detached: true, env: { ...process.env, NO_COLOR: '' } });
  let said = '';
  child.stdout.on('data', (chunk) => (said += chunk));
  try {
    for (let tries = 0; !pictures(said).length && tries < 600; tries += 1) await pause(100);
    // On a busy machine a picture comes in pieces.
    for (let tries = 0; !isWhole(pictures(said)[0]) && tries < 100; tries += 1) await pause(100);
    await scanned(report, browser, folder, () => said);
  } finally {
    process.kill(-child.pid, 'SIGTERM');
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Each run of lines in black on white: one picture. */
const pictures = (said) => (said.replaceAll('\r', '').match(/(?:\x1b\[30;107m[█▀▄ ]+\x1b\[0m\n)+/g) ?? [])
  .map((block) => block.trimEnd().split('\n').map((line) => line.replace(/\x1b\[[\d;]*m/g, '')));

/** Square: a line holds two rows. */
const isWhole = (lines) => lines !== undefined && 2 * lines.length >= lines[0].length;

/** Eight dots a module, as a grey picture that any reader takes. */
function asImage(lines) {
  const rows = lines.flatMap((line) => [[...line].map((c) => c === '█' || c === '▀'), [...line].map((c) => c === '█' || c === '▄')]);
  const dots = (row) => row.flatMap((dark) => Array(8).fill(dark ? 0 : 255));
  const bytes = Buffer.from(rows.flatMap((row) => Array(8).fill(dots(row)).flat()));
  return Buffer.concat([Buffer.from(`P5 ${rows[0].length * 8} ${rows.length * 8} 255\n`), bytes]);
}

/** Source: zbar reads it, a reader of ISO/IEC 18004 that is not ours. */
const readBy = (image) => spawnSync('zbarimg', ['--quiet', '--nodbus', '--raw', '-Sdisable', '-Sqrcode.enable', image], { encoding: 'utf8' }).stdout.trim();

/** From a tablet that is in: the bench may not, the lead shows a code that is read off the screen and lets one more in. */
async function offered(report, browser, folder, hand) {
  const { people } = await hand.page.evaluate(() => fetch('/api/people').then((reply) => reply.json()));
  const signOn = async (role) => {
    await hand.go('/people');
    await hand.tap(hand.page.getByRole('button', { name: people.find((one) => one.role === role).name }).first());
    await hand.go('/tablets');
  };
  await signOn('bench');
  report.check((await hand.text()).includes('Sign on as lead or owner first'), 'the bench is not offered a code', (await hand.text()).slice(0, 200));
  await signOn('lead');
  await hand.tap(hand.page.getByRole('button', { name: 'Show a code' }));
  const picture = hand.page.locator('svg.code');
  await picture.waitFor();
  const image = join(folder, 'offered.png');
  await picture.screenshot({ path: image });
  const read = readBy(image);
  report.check((await hand.text()).includes(read) && read.startsWith(`${new URL(hand.page.url()).origin}/?code=`), 'the code on the page is read off the screen: this page, with the code in it', read);
  report.check(/It holds for (10:00|9:\d\d) more/.test(await hand.text()), 'it says how long it holds', (await hand.text()).slice(0, 300));
  for (const [who, in_] of [['one more tablet is in by it', true], ['and no other after that one', false]]) {
    const other = await Hand.at(browser, new URL(read).origin, 'phone');
    other.expected = /403|401|422/;
    await other.page.goto(read);
    if (in_) await other.page.waitForURL((url) => url.search === '');
    else await other.page.getByText('That is not the code').waitFor();
    report.ok(who);
    await other.context.close();
  }
}

async function scanned(report, browser, folder, said) {
  const [picture] = pictures(said());
  if (!report.check(picture, 'the terminal shows a picture to scan', said().slice(0, 300))) return;
  const image = join(folder, 'code.pgm');
  writeFileSync(image, asImage(picture));
  const read = readBy(image);
  report.check(said().includes(read) && /^http:\/\/[^/]+\/\?code=[\w-]+$/.test(read), 'a reader of codes finds the address with the code in it', read);
  const hand = await Hand.at(browser, new URL(read).origin, 'phone');
  hand.expected = /403/;  // Until it is let in.
  try {
    await hand.page.goto(read);
    await hand.page.locator('footer.next').waitFor();
    await hand.page.waitForURL((url) => url.search === '');
    await hand.go('/board');
    report.check((await hand.text()).includes('Alley loosener'), 'a tablet that opens it is in, with nothing typed', (await hand.text()).slice(0, 200));
    const other = await Hand.at(browser, new URL(read).origin, 'phone');
    other.expected = /403|401|422/;
    await other.page.goto(read);
    await other.page.getByText('That is not the code').waitFor();
    report.ok('the same picture lets in nobody else');
    await other.context.close();
    report.check(pictures(said()).length >= 2, 'the next picture stands there already');
    await report.part('let in from a tablet', () => offered(report, browser, folder, hand));
  } finally {
    await hand.context.close();
  }
}
