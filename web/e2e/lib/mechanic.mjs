// mechanic.mjs: does what the line at the foot says, stage by stage, and nothing else: where the page does not lead on, the job
// stands still and the test says at which words.
const flat = (text) => text.replace(/\s+/g, ' ').trim();
const pause = (ms) => new Promise((done) => setTimeout(done, ms));

export class Mechanic {
  /** `readings`: figures by stage and rotor; `log`: told of each turn; `again`: looks anew at what was not seen before. */
  constructor(hand, readings, { log = () => undefined, picture = async () => undefined, tricks = {}, again = false } = {}) {
    Object.assign(this, { hand, readings, log, picture, tricks, again });
    this.done = new Set();
  }
  get page() {
    return this.hand.page;
  }
  stage() {
    return this.page.locator('ol.rule li.present button').getAttribute('aria-label').then((label) => label.replace(/,.*/, ''));
  }
  get footKey() {
    return this.page.locator('footer.next .keys .key').first();
  }
  async line() {
    return flat(await this.hand.nextLine());
  }
  /** Follows the line until it says `until`. */
  async follow(until, most = 400) {
    let last = '';
    for (let turn = 0; turn < most; turn += 1) {
      const line = await this.line();
      const stage = await this.stage();
      if (until(line, stage)) return line;
      const before = await this.state();
      await this.turn(stage);
      const after = await this.state();
      this.log(`${stage}: ${line}`);
      if (after === before) {
        if (last === before) throw new Error(`the page does not lead on from ${stage}: ${line} (sheet: ${flat(await this.hand.sheet.innerText()).slice(0, 500)})`);
        last = before;
        await pause(300);
      }
    }
    throw new Error(`no end after ${most} turns: ${await this.line()}`);
  }
  async state() {
    return flat(`${this.page.url()} ${await this.hand.title()} ${await this.line()} ${await this.hand.sheet.innerText()} ${await this.page.locator('.band').allInnerTexts()}`);
  }
  async turn(stage) {
    // The key of the line leads to another stage or part: go there first. At tear-down and stack it does the step.
    const key = this.footKey;
    const words = (await key.count()) ? flat(await key.innerText()) : '';
    if (/^(Go to|Keep, then)/.test(words)) return this.hand.tap(key);
    const of = { 'Book in': 'bookIn', Find: 'find', Plan: 'plan', 'Tear-down': 'tearDown', Inspect: 'inspect', Kit: 'kit', Press: 'press', Time: 'time', Stack: 'stack', Torque: 'torque', 'Test run': 'testRun', Release: 'release' }[stage];
    await this[of]();
  }
  rotor() {
    return this.page.locator('[data-station][aria-pressed=true] .name').innerText().then((name) => (/^\d+$/.test(name) ? Number(name) : 0));
  }
  /** Rows and cells of questions that nobody has answered: all get the same reply, or what `special` says. */
  async answerAll(scope, reply, special = {}) {
    for (let left = 60; left > 0; left -= 1) {
      const groups = await scope.getByRole('group').all();
      let open;
      for (const group of groups) {
        const label = (await group.getAttribute('aria-label')) ?? '';
        const keys = group.getByRole('button');
        if (['Unit', 'Gauge'].includes(label) || (await keys.count()) === 0) continue;
        const wanted = Object.entries(special).find(([part]) => label.includes(part))?.[1] ?? reply;
        if (wanted === null || this.done.has(`${this.page.url()}${label}`)) continue;
        const key = keys.filter({ hasText: new RegExp(`^\\s*${wanted}\\s*$`) });
        const said = (await group.locator('[aria-pressed=true]').allTextContents()).map(flat);
        if ((await key.count()) === 0 || (said.length > 0 && !(this.again && said.includes('not seen')))) continue;
        open = key.first();
        break;
      }
      if (!open) return;
      await this.hand.tap(open);
    }
    throw new Error('the questions do not end');
  }
  async bookIn() {
    const band = this.page.locator('.band');
    if (await band.locator('.choices').count()) {
      await this.answerAll(band, 'yes');
      return;
    }
    const rotor = await this.rotor();
    const play = this.readings.play?.[rotor];
    if (!play || this.done.has(`play${rotor}`)) return;
    this.done.add(`play${rotor}`);
    for (const sign of play.signs ?? []) await this.hand.tap(this.hand.key(sign));
    for (const sign of play.takenBack ?? []) for (let i = 0; i < 2; i += 1) await this.hand.tap(this.hand.key(sign));
    await this.hand.type(play.swing, play);
    await this.picture('book-in');
  }
  async find() {
    await this.picture('finding');
    await this.hand.tap(this.hand.key(/^Plan: open/));
  }
  async plan() {
    const choose = this.hand.key(/^Choose \d/).filter({ visible: true });
    if (!this.done.has('way')) {
      this.done.add('way');
      const advised = this.page.locator('.advised').getByRole('button', { name: /^Choose/ });
      await this.hand.tap((await advised.count()) ? advised : choose);
      await this.picture('plan');
      return;
    }
    await this.answerAll(this.hand.sheet, 'yes');
    for (const name of [/^Ordered/, /came in$/]) {
      for (let i = 0; i < 6; i += 1) {
        const key = this.hand.sheet.getByRole('button', { name }).and(this.page.locator(':not([aria-disabled=true])')).first();
        if ((await key.count()) === 0 || this.done.has(`${name}${i}`)) break;
        this.done.add(`${name}${i}`);
        await this.hand.tap(key);
      }
    }
  }
  async tearDown() {
    await this.picture('tear-down');
    const key = this.footKey;
    if ((await key.count()) && !/^Show where/.test(flat(await key.innerText()))) return this.hand.tap(key);
    await this.answerAll(this.hand.sheet, 'yes');
  }
  async inspect() {
    const rotor = await this.rotor();
    await this.readFields(this.readings.inspect?.[rotor] ?? {}, `inspect${rotor}`);
    await this.picture('inspect');
    await this.answerAll(this.hand.sheet, 'yes');
  }
  /** Every field of the keypad that has a reading here and has not been read by this hand. */
  async readFields(figures, where) {
    for (const [label, reading] of Object.entries(figures)) {
      const id = `${where}/${label}`;
      if (this.done.has(id)) continue;
      this.done.add(id);
      await this.toField(label);
      await this.hand.type(reading.figure ?? reading, reading);
      if (reading.corrected) {
        await this.toField(label);
        await this.hand.type(reading.corrected, { ...reading, figure: undefined });
      }
    }
  }
  async toField(label) {
    const block = this.page.locator('section.block', { has: this.hand.pad });
    const list = block.getByRole('combobox');
    const now = (await list.count()) ? await list.locator('option:checked').innerText() : await block.locator('.head h2').innerText();
    if (flat(now) !== label) await this.hand.field(label);
  }
  async kit() {
    const rotor = await this.rotor();
    if (rotor === 0) return;
    // What lies there is tapped on the drawing.
    for (let i = 0; i < 12; i += 1) {
      const piece = this.page.locator('figure g.tap').first();
      if ((await piece.count()) === 0) break;
      await this.hand.tap(piece);
    }
    await this.picture('kit');
    await this.answerAll(this.hand.sheet, 'yes', { 'left': '0', Laid: null, 'laid': null });
    await this.answerAll(this.hand.sheet, 'TH-55-100-C3');
    await this.readFields(this.readings.kit ?? {}, `kit${rotor}`);
  }
  async press() {
    const rotor = await this.rotor();
    if (rotor === 0) return;
    await this.answerAll(this.hand.sheet, 'outer ring|outer');
    await this.answerAll(this.hand.sheet, 'yes');
    const force = this.readings.press?.[rotor] ?? this.readings.press?.all;
    if (force && !this.done.has(`press${rotor}`)) {
      this.done.add(`press${rotor}`);
      await this.hand.type(force, { unit: 'lbf' });
    }
    await this.picture('press');
  }
  async time() {
    const rotor = await this.rotor();
    const marks = this.readings.marks?.[rotor];
    const look = this.hand.answer('Somebody who did not set it looked again: both marks right?', 'yes');
    if (/look/i.test(await this.line()) && (await look.count())) return this.as('Apprentice', () => this.hand.tap(look));
    if (!marks) return;
    for (const half of ['a', 'b']) {
      if (marks[half] === undefined || this.done.has(`mark${rotor}${half}`)) continue;
      this.done.add(`mark${rotor}${half}`);
      const end = half === 'a' ? 'A' : 'B';
      const look = this.hand.sheet.getByRole('group', { name: 'Seen from' }).getByRole('button', { name: `End ${end}`, exact: true });
      if ((await look.count()) && (await look.getAttribute('aria-pressed')) !== 'true') await this.hand.tap(look);
      const wrong = marks.wrong?.[half];
      if (wrong) {
        await this.tapFlat(rotor, wrong);
        await this.tricks.wrong?.(this, rotor, half);
      }
      await this.tapFlat(rotor, marks[half]);
    }
    await this.picture('timing');
  }
  tapFlat(rotor, flat) {
    return this.hand.tap(this.page.locator(`figure g.tap[data-id="rotor-${rotor}-flat-${flat}"]`));
  }
  /** Somebody else takes the tablet: by the cell of the title block, or by the menu where there is no room for it. */
  async handTo(name) {
    const cell = this.page.locator('header .cells').getByRole('link', { name: /^At the bench/ });
    if (await cell.filter({ visible: true }).count()) await this.hand.tap(cell);
    else {
      await this.hand.tap(this.page.getByRole('button', { name: 'Menu' }));
      await this.hand.tap(this.page.locator('nav.menu a[href="/people"]'));
    }
    await this.hand.tap(this.page.locator('button.name', { hasText: new RegExp(`^${name}`) }).first());
  }
  async who() {
    const kept = await this.page.evaluate(() => JSON.parse(localStorage.getItem('flatwise') ?? '{}').person);
    return this.people?.find((person) => person.id === kept)?.name ?? '';
  }
  async as(name, act) {
    const before = await this.who();
    if (before === name) return act();
    await this.handTo(name);
    await act();
    await this.handTo(before);
  }
  async stack() {
    const step = this.hand.sheet.locator('section.step');
    if (!this.done.has('before')) {
      this.done.add('before');
      await this.answerAll(this.hand.sheet.locator('.across').first(), 'yes');
    }
    const key = step.locator('.main .key');
    if ((await step.count()) && !this.done.has('steps')) {
      await this.answerAll(step, 'yes');
      if (await key.count()) {
        await this.picture('stack');
        return this.hand.tap(key);
      }
      this.done.add('steps');
    }
    await this.labels();
    if (!this.done.has('stack')) {
      this.done.add('stack');
      await this.hand.type(this.readings.stack.figure, this.readings.stack);
      await this.picture('stack-length');
    }
  }
  /** Each label on its own place. */
  async labels() {
    for (const group of await this.hand.sheet.getByRole('group').all()) {
      const label = (await group.getAttribute('aria-label')) ?? '';
      const place = /\b(S\d+)\b/.exec(label)?.[1];
      const said = (await group.locator('[aria-pressed=true]').allTextContents()).map(flat);
      if (!place || (said.length > 0 && !(this.again && !said.includes(place)))) continue;
      const key = group.getByRole('button', { name: place, exact: true });
      if (await key.count()) await this.hand.tap(key);
    }
  }
  async torque() {
    const nut = await this.page.locator('[data-station][aria-pressed=true] .name').innerText();
    if (this.done.has(`torque${nut}`)) return;
    this.done.add(`torque${nut}`);
    await this.hand.type(this.readings.torque, { unit: 'ft·lb' });
    await this.picture('torque');
  }
  async testRun() {
    const band = this.page.locator('.band');
    if (await band.locator('.choices').count()) return this.answerAll(band, 'yes');
    await this.readFields(this.readings.run ?? {}, 'run');
    await this.picture('test-run');
    await this.answerAll(this.hand.sheet, 'yes');
  }
  /** A key that only who answers for it may press: signs on as them. False where there is none, or it still waits. */
  async answersFor(label, name) {
    const key = this.hand.sheet.getByRole('button', { name: label });
    if ((await key.count()) === 0) return false;
    let pressed = false;
    await this.as(name, async () => {
      const open = key.and(this.page.locator(':not([aria-disabled=true])'));
      if ((await open.count()) === 0) return;
      await this.hand.tap(open);
      pressed = true;
    });
    return pressed;
  }
  async release() {
    await this.picture('release');
    for (const [label, name] of [['Bench signs', 'Bench'], ['Lead signs', 'Lead'], ['Owner signs', 'Owner']]) {
      if (await this.answersFor(label, name)) return;
    }
    if (await this.answersFor('Release it', 'Lead')) return;
    const go = this.hand.sheet.locator('section.standing li').getByRole('button').first();
    if (await go.count()) return this.hand.tap(go);
  }
}
