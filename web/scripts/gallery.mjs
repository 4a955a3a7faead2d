// gallery.mjs: looks at every block at three widths and three themes in Chromium: no accessibility violation, nothing
// wider than the page, no target smaller than 48 px, no text smaller than 14 px. One `ok` or `not ok` line a check.
//   node scripts/gallery.mjs [folder for pictures]
//   FLATWISE_VIEWS=<folder of bench views as JSON> node scripts/gallery.mjs [folder for pictures]
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { createServer } from 'vite';

const web = resolve(dirname(fileURLToPath(import.meta.url)), '..');
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const pictures = process.argv[2];
let bad = 0;
const check = (good, what, more = '') => {
  if (!good) bad++;
  console.log(`${good ? 'ok' : 'not ok'} ${what}${good ? '' : `: ${more}`}`);
};

// What stands in the page that breaks a rule of the page.
const faults = () => {
  const shown = (e) => { const b = e.getBoundingClientRect(); return b.width > 0 && b.height > 0; };
  const name = (e) => `${e.tagName.toLowerCase()} '${(e.getAttribute('aria-label') ?? e.textContent ?? '').trim().slice(0, 30)}'`;
  const small = [...document.querySelectorAll('button, select, textarea, input:not(.aloud):not([inputmode=none]), .tap rect')].filter(shown).flatMap((e) => {
    const { width, height } = e.getBoundingClientRect();
    return width < 47.5 || height < 47.5 ? [`${name(e)} ${width.toFixed(0)} x ${height.toFixed(0)}`] : [];
  });
  const tiny = [...document.querySelectorAll('p, span, b, dt, dd, th, td, button, label, li, svg text')].filter((e) => shown(e) && !e.closest('.ways svg, .fraction, .drawn, .aloud') && [...e.childNodes].some((n) => n.nodeType === 3 && n.data.trim())).flatMap((e) => {
    const svg = e.closest('svg');
    const scale = svg ? svg.getBoundingClientRect().width / svg.viewBox.baseVal.width : 1;
    const size = parseFloat(getComputedStyle(e).fontSize) * scale;
    return size < 13.9 ? [`${name(e)} ${size.toFixed(1)} px`] : [];
  });
  const styled = [...document.querySelectorAll('[style]')].length;
  return { small, tiny, wide: document.documentElement.scrollWidth - innerWidth, styled };
};

/** Figures by key and by keyboard; a working; a release that is forced. */
async function byHand(context) {
  const page = await context.newPage();
  const said = () => page.locator('pre').innerText();
  await page.goto(`${address}?sheet=inspection`, { waitUntil: 'networkidle' });
  const keep = page.getByRole('button', { name: 'Keep', exact: true });
  const key = (name) => page.getByRole('button', { name, exact: true });
  check((await keep.getAttribute('aria-disabled')) === 'true', 'nothing typed, nothing to keep');
  for (const name of ['4', 'fraction', '5', 'fraction']) await key(name).click();
  check((await keep.getAttribute('aria-disabled')) === 'true', 'half a fraction cannot be kept');
  await key('over 8').click();
  check((await page.locator('.below').innerText()).includes('117.5'), 'the other unit stands below', await page.locator('.below').innerText());
  check((await page.locator('.picture .ink-next[data-id^="plane-A"]').count()) > 0, 'the plane being read is blue in the drawing');
  await keep.click();
  check((await said()).includes('"diameter":"4 5/8 in","gauge":"G-03"'), 'a fraction is kept as typed, with its gauge', await said());
  check((await page.locator('select').inputValue()) === 'bore:A2', 'Keep goes on to the next field');
  await page.getByRole('button', { name: 'B, 3, not read' }).click();
  await page.waitForFunction(() => document.activeElement?.tagName === 'INPUT');
  await page.keyboard.type('3.9362');
  await page.keyboard.press('Backspace');
  await page.keyboard.type('4');
  await page.keyboard.press('Enter');
  check((await said()).includes('"plane":"B","direction":3,"directions":4,"diameter":"3.9364 in"'), 'a cell chooses its field, typed by keyboard', await said());
  await page.getByRole('button', { name: /^Plane A: 3.9365/ }).click();
  const inputs = page.locator('.answer .inputs').first();
  await inputs.waitFor({ timeout: 2000 }).catch(() => undefined);
  check(await inputs.isVisible(), 'a figure opens its working under it');
  await page.goto(`${address}?sheet=timing`, { waitUntil: 'networkidle' });
  await page.getByRole('button', { name: 'Half B on flat 5' }).focus();
  await page.keyboard.press('Enter');
  check((await said()).includes('"flat":5'), 'a flat is tapped by keyboard', await said());
  await page.goto(`${address}?sheet=release`, { waitUntil: 'networkidle' });
  await key('Release it blocked').click();
  const sure = page.getByRole('button', { name: 'Yes, release it blocked' });
  check((await sure.getAttribute('aria-disabled')) === 'true', 'no release without its reason');
  await page.getByLabel('Why it leaves with things open').fill('Customer fetches it today, told of rotor 4.');
  await sure.click();
  check((await said()).includes('"forced":true,"reason":"Customer fetches it today, told of rotor 4."'), 'forced with its reason by a second tap', await said());
  await page.goto(`${address}?sheet=stack`, { waitUntil: 'networkidle' });
  const third = page.getByRole('group', { name: 'Seals greased, no lip turned over' });
  await third.getByRole('button', { name: 'yes' }).click();
  check((await third.getByRole('button', { name: 'yes' }).getAttribute('aria-pressed')) === 'true', 'an answer shows at once while it waits');
  await context.close();
}

const server = await createServer({ root: web, logLevel: 'error', server: { port: 0 } });
await server.listen();
const address = `http://localhost:${server.httpServer.address().port}/dev/gallery.html`;
const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: ['--no-sandbox'] });
/** Sheets as the server sends them, at three widths: the faults of the page, each sheet by its name. */
async function lookAtViews(folder) {
  const names = readdirSync(folder).filter((name) => name.endsWith('.json')).sort();
  for (const width of [360, 820, 1440]) {
    const context = await browser.newContext({ viewport: { width, height: 1180 }, reducedMotion: 'reduce' });
    const page = await context.newPage();
    let errors = [];
    page.on('pageerror', (e) => errors.push(e.message));
    let body = '';
    await page.route((url) => url.pathname === '/view.json', (route) => route.fulfill({ body, contentType: 'application/json' }));
    for (const name of names) {
      body = readFileSync(resolve(folder, name), 'utf8');
      errors = [];
      await page.goto(`${address}?view=/view.json`);
      await page.waitForSelector('.sheet', { timeout: 5000 }).catch(() => errors.push('no sheet'));
      await page.waitForTimeout(60);
      await page.addScriptTag({ content: axe });
      const { violations } = await page.evaluate(() => window.axe.run(document, { resultTypes: ['violations'] }));
      const found = await page.evaluate(faults);
      const amiss = [...errors, ...violations.map((v) => `${v.id}: ${v.nodes.slice(0, 3).map((n) => n.html.slice(0, 120)).join(' | ')}`), ...found.small.slice(0, 5), ...found.tiny.slice(0, 5),
        ...(found.wide > 0 ? [`${found.wide} px too wide`] : [])];
      check(amiss.length === 0, `${name} at ${width} px`, amiss.join('; '));
      if (pictures) await page.screenshot({ path: resolve(pictures, `${name.replace('.json', '')}-${width}.png`), fullPage: true });
    }
    await context.close();
  }
}

try {
  if (process.env.FLATWISE_VIEWS) await lookAtViews(process.env.FLATWISE_VIEWS);
  else for (const [theme, widths] of [['light', [360, 820, 1440, 1920]], ['dark', [820]], ['sun', [360]]])
    for (const width of widths) {
      const context = await browser.newContext({ viewport: { width, height: 1180 }, reducedMotion: 'reduce' });
      const page = await context.newPage();
      const errors = [];
      page.on('pageerror', (e) => errors.push(e.message));
      await page.goto(`${address}?theme=${theme}`, { waitUntil: 'networkidle' });
      await page.waitForSelector('article');
      await page.addScriptTag({ content: axe });
      const { violations } = await page.evaluate(() => window.axe.run(document, { resultTypes: ['violations'] }));
      const at = `${width} px, ${theme}`;
      check(errors.length === 0, `no error in the page at ${at}`, errors.join('; '));
      check(violations.length === 0, `no accessibility violation at ${at}`, violations.map((v) => `${v.id} ${v.nodes.slice(0, 4).map((n) => n.target.join(' ') + ' ' + (n.any[0]?.message ?? '')).join(' | ')}`).join('\n  '));
      const found = await page.evaluate(faults);
      check(found.wide <= 0, `nothing wider than the page at ${at}`, `${found.wide} px`);
      check(found.small.length === 0, `every target 48 px at ${at}`, found.small.slice(0, 8).join('; '));
      check(found.tiny.length === 0, `no text under 14 px at ${at}`, found.tiny.slice(0, 8).join('; '));
      if (pictures) await page.screenshot({ path: resolve(pictures, `${theme}-${width}.png`), fullPage: true });
      if (pictures && theme === 'light')
        for (const article of await page.locator('article').all())
          await article.screenshot({ path: resolve(pictures, `${width}-${await article.getAttribute('aria-label')}.png`) });
      await context.close();
    }
  if (!process.env.FLATWISE_VIEWS) await byHand(await browser.newContext({ viewport: { width: 820, height: 1180 }, reducedMotion: 'reduce' }));
} finally {
  await browser.close();
  await server.close();
}
process.exit(bad === 0 ? 0 : 1);
