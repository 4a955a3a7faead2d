// look.mjs: pictures of screens at the widths of the design.
//   node dev/look.mjs ADDRESS FOLDER NAME=PATH...
import { chromium } from 'playwright-core';

const [base, folder, ...wanted] = process.argv.slice(2);
const sizes = { phone: [360, 740], tablet: [820, 1180], wide: [1440, 900], sideways: [740, 360] };
const only = process.env['SIZES']?.split(',') ?? ['phone', 'tablet', 'wide'];
const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
for (const size of only) {
  const [width, height] = sizes[size];
  const page = await browser.newPage({ viewport: { width, height }, hasTouch: true });
  page.on('console', (message) => ['error', 'warning'].includes(message.type()) && console.log(size, message.text()));
  page.on('pageerror', (error) => console.log(size, String(error)));
  await page.addInitScript((kept) => localStorage.setItem('flatwise', kept), JSON.stringify({ person: process.env['PERSON'] ?? '00000000-0000-7000-8000-000000900001', units: 'inch', theme: process.env['THEME'] ?? 'light' }));
  for (const pair of wanted) {
    const [name, path] = [pair.slice(0, pair.indexOf('=')), pair.slice(pair.indexOf('=') + 1)];
    await page.goto(base + path);
    await page.waitForTimeout(900);
    const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    if (over > 0) console.log(`${name} ${size}: ${over} px too wide`);
    await page.screenshot({ path: `${folder}/${name}-${size}.png`, fullPage: process.env['FULL'] === 'yes' });
  }
  await page.close();
}
await browser.close();
