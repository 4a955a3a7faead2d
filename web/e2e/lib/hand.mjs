// hand.mjs: a mechanic's hand on a tablet: taps only, counted, each target measured; no keyboard and no way past the page.
import { chromium } from 'playwright-core';

export const sizes = {
  phone: { width: 360, height: 740, touch: true },
  tablet: { width: 820, height: 1180, touch: true },
  wide: { width: 1440, height: 900, touch: false },
};
const leastTarget = 48;

export const launch = () => chromium.launch({ executablePath: process.env['FLATWISE_CHROMIUM'] ?? '/usr/bin/chromium', args: ['--no-sandbox'] });

const pause = (ms) => new Promise((done) => setTimeout(done, ms));
const escaped = (text) => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** Everything the browser complains of goes into `complaints`; what a test does on purpose is taken out by `allow`. */
export function listen(page, complaints, allow = () => false) {
  const say = (text) => { if (!allow(text)) complaints.push(text); };
  page.on('console', (message) => { if (['error', 'warning'].includes(message.type())) say(`${message.text()} ${message.location().url ?? ''}`); });
  page.on('pageerror', (error) => say(String(error)));
}

export class Hand {
  taps = 0;
  small = new Map();
  complaints = [];
  /** Texts that are expected while the network is cut or the server is down. */
  expected = undefined;
  open = new Set();
  /** Rests shorter between taps: where thousands are made. */
  haste = false;
  lastCall = 0;

  static async at(browser, base, size, { theme = 'light', units = 'inch', person, context: given } = {}) {
    const hand = new Hand();
    const { width, height, touch } = sizes[size] ?? size;
    hand.context = given ?? await browser.newContext({ viewport: { width, height }, hasTouch: touch, isMobile: false, reducedMotion: 'reduce' });
    hand.page = await hand.context.newPage();
    hand.base = base;
    hand.touch = touch;
    hand.size = size;
    hand.page.setDefaultTimeout(20_000);
    listen(hand.page, hand.complaints, (text) => hand.expected?.test(text) ?? false);
    await hand.page.addInitScript((kept) => { try { if (!localStorage.getItem('flatwise')) localStorage.setItem('flatwise', kept); } catch { /* a page that may keep nothing */ } },
      JSON.stringify({ theme, units, ...(person ? { person } : {}) }));
    const api = (request) => /\/api\//.test(request.url()) && !/\/api\/events/.test(request.url());
    hand.page.on('request', (request) => { if (api(request)) { hand.open.add(request); hand.lastCall = Date.now(); } });
    for (const end of ['requestfinished', 'requestfailed'])
      hand.page.on(end, (request) => { if (hand.open.delete(request)) hand.lastCall = Date.now(); });
    return hand;
  }
  async go(path) {
    await this.page.goto(this.base + path);
    await this.quiet();
  }
  /** Nothing is on its way to the server or back, and the page has drawn it. */
  async quiet(wait = 20_000) {
    const until = Date.now() + wait;
    await this.page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))).catch(() => undefined);
    for (;;) {
      if (this.open.size === 0 && Date.now() - this.lastCall > (this.haste ? 25 : 60) && (await this.sending()) === 0) return;
      if (Date.now() > until) throw new Error(`the page does not come to rest: ${[...this.open].map((r) => r.url()).join(' ')} ${await this.sending()} to be sent`);
      await pause(25);
    }
  }
  sending() {
    return this.page.getByText('Waiting to be sent.').or(this.page.getByText('To be sent')).count();
  }
  async tap(target, { rest = true } = {}) {
    const locator = typeof target === 'string' ? this.key(target) : target;
    await locator.first().waitFor({ state: 'attached' });
    const one = locator.first();
    const box = await one.boundingBox();
    if (box && (box.width < leastTarget - 0.5 || box.height < leastTarget - 0.5)) {
      const name = await one.evaluate((e) => `${e.tagName.toLowerCase()} "${(e.getAttribute('aria-label') ?? e.textContent ?? '').trim().slice(0, 40)}"`);
      this.small.set(name, `${Math.round(box.width)}×${Math.round(box.height)}`);
    }
    if (this.touch) await one.tap();
    else await one.click();
    this.taps += 1;
    if (this.touch) await pause(130);  // Two touches within 80 ms count as none; a hurried browser adds to that.
    if (rest) await this.quiet();
  }
  /** A key by its words; within `scope` where the same words stand elsewhere too. */
  key(name, scope = this.page) {
    return scope.getByRole('button', { name: name instanceof RegExp ? name : new RegExp(`^${escaped(name)}$`) })
      .or(scope.getByRole('link', { name: name instanceof RegExp ? name : new RegExp(`^${escaped(name)}$`) }));
  }
  /** The answer of a question: its group is named by its label. */
  answer(question, reply) {
    const named = question instanceof RegExp ? question : new RegExp(`^${escaped(question)}$`);
    return this.page.getByRole('group', { name: named }).getByRole('button', { name: new RegExp(`^${escaped(reply)}$`) });
  }
  async option(label, text) {
    const select = this.page.getByRole('combobox', { name: label, exact: true });
    const box = await select.boundingBox();
    if (box && box.height < leastTarget) this.small.set(`select ${label}`, `${Math.round(box.height)}`);
    await select.selectOption({ label: text });
    this.taps += 2;  // One opens the list, one chooses.
  }
  get sheet() {
    return this.page.locator('section.sheet');
  }
  title() {
    return this.sheet.locator('h1').innerText();
  }
  nextLine() {
    return this.page.locator('footer.next .says').innerText();
  }
  station(name) {
    return this.page.locator('[data-station]').filter({ has: this.page.locator('.name', { hasText: new RegExp(`^${escaped(name)}$`) }) });
  }
  stage(word) {
    return this.page.locator('ol.rule').getByRole('button', { name: new RegExp(`^${escaped(word)},`) });
  }
  /** To a stage: by the rule, or on a phone by the cell that lists the stages. */
  async toStage(word) {
    if (await this.stage(word).first().isVisible()) return this.tap(this.stage(word));
    await this.tap(this.page.locator('header').getByRole('button', { name: /^Stage/ }));
    await this.tap(this.page.locator('.all').getByRole('button', { name: word, exact: true }));
  }
  get pad() {
    return this.page.locator('.pad');
  }
  /** Types a figure on the keypad: "3.9365", "1 5/8", ".5 thou" is "thou:5"; `unit` and `gauge` by their keys. */
  async type(figure, { unit, gauge, keep = true } = {}) {
    const block = this.page.locator('section.block', { has: this.pad });
    if (unit) {
      const key = block.getByRole('group', { name: 'Unit' }).getByRole('button', { name: unit, exact: true });
      if ((await key.getAttribute('aria-pressed')) !== 'true') await this.tap(key, { rest: false });
    }
    if (gauge) {
      const key = block.getByRole('group', { name: 'Gauge' }).getByRole('button', { name: new RegExp(`^${escaped(gauge)}`) });
      if ((await key.getAttribute('aria-pressed')) !== 'true') await this.tap(key, { rest: false });
    }
    for (const key of keysOf(figure)) await this.press(key);
    if (keep) await this.tap(this.pad.getByRole('button', { name: 'Keep', exact: true }));
  }
  async press(key) {
    const names = { '.': 'point', '±': 'plus or minus', fraction: /fraction/, thou: /thou/, undo: /undo/ };
    const name = key.startsWith('/') ? `over ${key.slice(1)}` : (names[key] ?? key);
    await this.tap(this.pad.getByRole('button', typeof name === 'string' ? { name, exact: true } : { name }), { rest: false });
  }
  /** Chooses the keypad's field, by its key or in its list. */
  async field(label) {
    const block = this.page.locator('section.block', { has: this.pad.or(this.page.locator('form input[type=text]')) });
    const select = block.getByRole('combobox');
    if (await select.count()) {
      await select.selectOption({ label });
      this.taps += 2;
    } else if (await block.locator('.fields').count()) {
      await this.tap(block.locator('.fields').getByRole('button', { name: label, exact: true }), { rest: false });
    }
  }
  async text() {
    return this.page.locator('body').innerText();
  }
  async close() {
    await this.page.close();
  }
}

/** The keys that spell a figure. */
export function keysOf(figure) {
  if (figure.startsWith('thou:')) return [...figure.slice(5), 'thou'];
  const fraction = /^(?:(\d+) )?(\d+)\/(\d+)$/.exec(figure);
  if (fraction) return [...(fraction[1] ?? ''), 'fraction', ...fraction[2], 'fraction', `/${fraction[3]}`];
  return [...figure];
}
