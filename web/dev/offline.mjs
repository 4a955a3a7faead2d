// offline.mjs: the page without a network, against dev/server.mjs: answers are kept, said to be waiting, survive a reload,
// arrive once; a refused one is shown and can be dropped. Prints 'ok WHAT' and 'not ok WHAT'.
//   node dev/offline.mjs ADDRESS
import { chromium } from 'playwright-core';

const [base] = process.argv.slice(2);
const job = '00000000-0000-7000-8000-000000700001';
const person = '00000000-0000-7000-8000-000000900001';
const say = (good, what) => console.log(`${good ? 'ok' : 'not ok'} ${what}`);
const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
const context = await browser.newContext({ viewport: { width: 820, height: 1180 } });
const page = await context.newPage();
page.on('pageerror', (error) => console.log('not ok', String(error)));
await page.addInitScript((who) => localStorage.setItem('flatwise', JSON.stringify({ person: who, units: 'inch', device: 'tablet 1' })), person);
const sent = async () => (await context.request.get(`${base}/dev/entries`)).json();
const waits = () => page.getByText('To be sent').count();

await page.goto(`${base}/job/${job}?stage=booking_in&station=9`);
await page.waitForSelector('.sheet');
await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
const before = (await sent()).length;
await context.setOffline(true);
await page.getByRole('button', { name: 'noisy' }).click();
await page.waitForTimeout(800);
say((await waits()) === 1, 'an answer without a network waits, and the title block says so');
say((await page.getByRole('button', { name: 'noisy' }).getAttribute('aria-pressed')) === 'true', 'the answer is shown as given');
await page.reload();
await page.waitForSelector('.sheet');
await page.waitForTimeout(500);
say((await waits()) === 1, 'it still waits after a reload without a network');
say((await page.getByText('This is as it was').count()) === 1, 'the last state is shown, and said to be old');
await page.screenshot({ path: process.env['PICTURE'] ?? 'offline.png' });
await context.setOffline(false);
await page.waitForTimeout(3500);
const after = await sent();
say(after.length === before + 1, `it arrives once when the network is back (${after.length - before})`);
say(after.at(-1)?.by === person && after.at(-1)?.on === 'tablet 1', 'as its author, from its device');
say((await waits()) === 0, 'nothing waits any more');
await context.request.get(`${base}/dev/refuse`);
await page.getByRole('button', { name: 'rough' }).click();
await page.waitForTimeout(1200);
say((await page.getByText('Not taken').count()) >= 1, 'a refused answer is said to be refused');
await page.getByRole('button', { name: /Not taken/ }).click();
say((await page.getByText('Read it again.').count()) >= 1, 'with what to do');
await page.getByRole('button', { name: 'Take it out' }).first().click();
await page.waitForTimeout(600);
say((await page.getByRole('button', { name: /Not taken/ }).count()) === 0, 'and can be taken out');
await browser.close();
