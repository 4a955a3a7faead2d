// gallery.mjs: looks at every block at three widths and three themes in Chromium: no accessibility violation, nothing
// wider than the page, no target smaller than 48 px, no text smaller than 14 px. One `ok` or `not ok` line a check.
//   node scripts/gallery.mjs [folder for pictures]
import { readFileSync } from 'node:fs';
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

const server = await createServer({ root: web, logLevel: 'error', server: { port: 0 } });
await server.listen();
const address = `http://localhost:${server.httpServer.address().port}/dev/gallery.html`;
const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: ['--no-sandbox'] });
try {
  for (const [theme, widths] of [['light', [360, 820, 1440, 1920]], ['dark', [820]], ['sun', [360]]])
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
} finally {
  await browser.close();
  await server.close();
}
process.exit(bad === 0 ? 0 : 1);
