// player.mjs: tells the page what a list of entries says, by taps and keypad. Where each is asked for it learns from the screen that the
// page itself shows (the API's bench view); what has no place there throws NoWay: then the page lacks something, not the test.
const flat = (text) => text.replace(/\s+/g, ' ').trim();
const sorted = (value) => (value && typeof value === 'object' && !Array.isArray(value)
  ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)).map(([name, inner]) => [name, sorted(inner)])) : value);
const same = (a, b) => JSON.stringify(sorted(a)) === JSON.stringify(sorted(b));
const without = (body, ...names) => Object.fromEntries(Object.entries(body).filter(([name, value]) => !names.includes(name) && value !== '' && value !== null));

export class NoWay extends Error {}

/** Everything of a sheet, in the order of the page. */
const blocksOf = (view) => ['head', 'left', 'right', 'foot'].flatMap((part) => view.sheet[part]);
const questionsOf = (view) => [
  ...(view.band?.questions ?? []),
  ...blocksOf(view).flatMap((block) => (block.block === 'asks' ? block.questions : block.block === 'step' && block.question ? [block.question] : [])),
];
const fieldsOf = (view) => blocksOf(view).flatMap((block) => (block.block === 'keypad' ? block.fields : []));

/** "99.987 mm" as what is typed on the keys: feet, which no key has, as inches; a word for a degree as its sign. */
export function typedOn(text, units) {
  const cut = /^(.*?\d)\s*([^\d\s/]\S*)$/.exec(text);
  if (!cut) return { figure: text };
  let [, figure, unit] = cut;
  if (unit === 'deg') unit = '°';
  if (unit === 'ft' && !units.includes('ft')) [figure, unit] = [String(Math.round(Number(figure) * 12 * 1e6) / 1e6), 'in'];
  return { figure, unit };
}

export class Player {
  constructor(hand, server, job, person) {
    Object.assign(this, { hand, server, job, person });
    this.refusals = [];
  }
  get page() {
    return this.hand.page;
  }
  /** The screen of a place, as the page shows it. */
  view(place) {
    const query = new URLSearchParams({ units: 'metric', by: this.person });
    for (const [name, value] of Object.entries(place)) if (value !== undefined && value !== null) query.set(name, value);
    return this.server.get(`/api/jobs/${this.job}/bench?${query}`);
  }
  async goTo(place) {
    const view = await this.view(place);
    const mark = view.stages.find((one) => one.stage === (place.stage ?? view.stage));
    if ((await this.page.locator('ol.rule li.present button').getAttribute('aria-label')).replace(/,.*/, '') !== mark.word) await this.hand.toStage(mark.word);
    const at = place.station ?? view.station;
    const cell = this.page.locator(`[data-station="${at}"]`);
    if ((await cell.count()) === 0) throw new NoWay(`no cell for station ${at}`);
    if ((await cell.first().getAttribute('aria-pressed')) !== 'true') await this.hand.tap(cell);
    // What is known to be wrong stands before the pull and the run, and a key goes on all the same.
    const on = blocksOf(view).flatMap((block) => (block.block === 'actions' ? block.actions : [])).find((one) => one.label.endsWith('all the same'));
    if (!on) return view;
    const key = this.page.locator('.sheet').getByRole('button', { name: on.label, exact: true });
    if (await key.count()) await this.hand.tap(key);
    return this.view({ ...place, step: on.do.go.step });
  }
  async choose(question, choice) {
    // Under the band or on the sheet; the same words may be asked of two parts, never twice on one sheet.
    const key = this.page.getByRole('group', { name: question.label, exact: true }).getByRole('button', { name: choice.label, exact: true });
    if ((await key.count()) === 0) throw new NoWay(`'${question.label}' has no key '${choice.label}'`);
    if ((await key.first().getAttribute('aria-pressed')) !== 'true') await this.hand.tap(key);
  }
  async type(field, text, gauge) {
    const block = this.page.locator('section.block', { has: this.hand.pad.or(this.page.locator('form input[type=text]')) });
    const list = block.getByRole('combobox');
    const now = (await list.count()) ? await list.locator('option:checked').innerText() : await block.locator('.head h2').innerText();
    if (flat(now) !== flat(field.label)) await this.hand.field(field.label);
    if (field.kind === 'text') {
      await block.locator('input[type=text]').fill(text);
      return this.hand.tap(block.locator('form').getByRole('button'));
    }
    const typed = typedOn(text, field.units);
    const label = gauge && field.gauges?.find((one) => one.id === gauge)?.label;
    if (gauge && !label) throw new NoWay(`'${field.label}' does not offer gauge ${gauge}`);
    if (typed.unit && !field.units.includes(typed.unit)) throw new NoWay(`'${field.label}' does not offer ${typed.unit}`);
    await this.hand.type(typed.figure, { unit: typed.unit, gauge: label });
    const refused = this.page.locator('.sheet .sent .refused');
    if (await refused.count()) {
      this.refusals.push({ text, says: flat(await refused.first().innerText()) });
      await this.hand.tap(refused.first().getByRole('button'));
    }
  }
  /** One entry at its place. */
  async play({ stage, station, body }) {
    if (body.kind === 'nut_pulled') return this.pull(station, body);
    if (body.kind === 'label_put_back') return this.label(body);
    const view = await this.goTo({ stage: body.kind === 'part_measured' ? 'inspection' : stage, station });
    const loose = (one) => (body.kind === 'feeler_tried' ? without(one, 'blade', 'gauge') : without(one));
    const tap = blocksOf(view).flatMap((b) => (b.block === 'drawing' ? b.taps : [])).find((one) => one.do?.record?.length === 1 && same(loose(one.do.record[0].body), loose(body)));
    if (tap && (await this.page.locator(`figure g.tap[data-id="${tap.id}"]`).count())) return this.hand.tap(this.page.locator(`figure g.tap[data-id="${tap.id}"]`));
    for (const question of questionsOf(view)) {
      const choice = question.choices.find((one) => same(loose(one.draft.body), loose(body)));
      if (choice) return this.choose(question, choice);
    }
    const field = fieldsOf(view).find((one) => same(without(one.draft.body, one.into, one.gauge_into), without(body, one.into, one.gauge_into)));
    if (!field) throw new NoWay(`nothing on ${view.title.stage}, ${view.sheet.title}, takes ${JSON.stringify(body)}${view.sheet.shut ? `: ${view.sheet.shut}` : ''}`);
    return this.type(field, body[field.into], field.gauge_into && body[field.gauge_into]);
  }
  /** Labels go on the places from end A, whatever number the first place has. */
  async label(body) {
    const view = await this.goTo({ stage: 'stack' });
    const places = questionsOf(view).filter((one) => one.choices[0]?.draft.body.kind === 'label_put_back');
    const place = places[body.position - 1];
    const choice = place?.choices.find((one) => one.draft.body.label === body.label);
    if (!choice) throw new NoWay(`no place or no key for label ${JSON.stringify(body)}`);
    return this.choose(place, choice);
  }
  /** The way whose tools these are, the reading, then the tool's true lengths and the turn that was seen. */
  async pull(station, body) {
    const bar = body.with === 'bar';
    let view = await this.goTo({ stage: 'torque', station });
    const table = blocksOf(view).find((block) => block.block === 'table');
    await this.hand.tap(this.page.locator('.sheet').getByRole('button', { name: table.rows[body.extension ? 1 : 0].action.says }).first());
    const field = fieldsOf(view).find((one) => one.into === 'shown' && one.draft.body.with === body.with);
    if (!field) throw new NoWay(`no field for a pull with a ${body.with}`);
    await this.type(field, body.shown, body.gauge);
    for (const into of bar ? ['tool_length', 'turned'] : ['tool_length', 'extension', 'turned']) {
      if (!body[into]) continue;
      view = await this.view({ stage: 'torque', station });
      await this.type(fieldsOf(view).find((one) => one.into === into), body[into]);
    }
  }
  /** Plan and tear-down: these rotors are to be opened; then every step is done. */
  async takeOff(rotors) {
    for (const rotor of rotors) {
      const first = await this.view({ stage: 'plan' });
      const view = await this.goTo({ stage: 'plan', station: first.strip.stations.find((one) => one.kind === 'rotor' && one.name === String(rotor)).index });
      const key = blocksOf(view).flatMap((b) => (b.block === 'actions' ? b.actions : [])).find((one) => one.do.record?.[0].body.open?.includes(rotor));
      if (!key) throw new NoWay(`no key takes rotor ${rotor} into the plan`);
      await this.hand.tap(this.page.locator('.sheet').getByRole('button', { name: key.label, exact: true }));
    }
    await this.steps('teardown', () => false);
  }
  /** Every step of a stage, or until `enough` says so. */
  async steps(stage, enough) {
    await this.goTo({ stage });
    for (let turn = 0; turn < 120; turn += 1) {
      await this.page.waitForTimeout(60);  // What the last key led to is drawn by then.
      await this.hand.quiet();
      const step = this.page.locator('section.step');
      const ask = step.getByRole('group').getByRole('button', { name: 'yes', exact: true });
      if ((await ask.count()) && (await ask.getAttribute('aria-pressed')) !== 'true') await this.hand.tap(ask);
      const key = step.locator('.main .key');
      if ((await key.count()) === 0 || enough(await this.server.entries(this.job))) return;
      await this.hand.tap(key);
    }
    throw new NoWay(`the steps of ${stage} do not end`);
  }
  /** All of a rebuild, in its order. */
  async playAll(rebuild) {
    const stations = (kind) => rebuild.entries.filter((one) => one.body.kind === kind).map((one) => one.body.station).sort((a, b) => a - b);
    const later = [];
    let off = false;
    let on = false;
    for (const entry of rebuild.entries) {
      if (entry.body.kind === 'taken_off') {
        if (!off) await this.takeOff(rebuild.came_off);
        off = true;
      } else if (entry.body.kind === 'put_on') {
        const wanted = stations('put_on');
        if (!on) await this.steps('stack', (entries) => wanted.every((station) => entries.some((one) => one.body.kind === 'put_on' && one.body.station === station)));
        on = true;
      } else if (!(await this.shut(entry))) await this.play(entry);
      else later.push(entry);
    }
    for (const entry of later) {
      await this.openBand(entry.stage);
      await this.play(entry);
    }
  }
  /** What the page asks before hands go to the machine, and a readings file does not know of: yes. */
  async openBand(stage) {
    const view = await this.goTo({ stage });
    for (const question of view.band?.questions ?? []) if (question.said.length === 0) await this.choose(question, question.choices[0]);
  }
  /** Yes to every question of these stages and parts that nobody has answered, but for those named: `left` of a question's id. */
  async answerOpen(places, left) {
    for (const place of places) {
      const view = await this.goTo(place);
      for (const question of questionsOf(view)) {
        const [yes] = question.choices;
        if (yes?.draft.body.kind === 'answered' && question.said.length === 0 && !left(yes.draft.body)) await this.choose(question, yes);
      }
    }
  }
  /** Whether the sheet of an entry stays empty until the band above it is answered; what the band itself asks is never shut. */
  async shut({ stage, body }) {
    if (body.kind !== 'answered' && body.kind !== 'run_read') return false;
    const view = await this.view({ stage });
    if (view.sheet.shut === undefined) return false;
    return body.kind === 'run_read' || !view.band?.questions.some((one) => one.choices[0].draft.body.question === body.question);
  }
}
