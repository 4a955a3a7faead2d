// report.mjs: answers in lines 'ok WHAT' and 'not ok WHAT: why', as scripts/lib.sh counts them; figures as 'figure NAME: VALUE'.

export class Report {
  failed = 0;
  constructor(prefix = '') {
    this.prefix = prefix;
  }
  named(prefix) {
    const report = new Report(`${this.prefix}${prefix}: `);
    report.parent = this;
    return report;
  }
  ok(what) {
    console.log(`ok ${this.prefix}${what}`);
  }
  notOk(what, why) {
    console.log(`not ok ${this.prefix}${what}: ${String(why).replace(/\s+/g, ' ').slice(0, 900)}`);
    for (let at = this; at; at = at.parent) at.failed += 1;
  }
  /** One check. `why` may be a function: it is only asked where the check fails. */
  check(good, what, why = 'no') {
    if (good) this.ok(what);
    else this.notOk(what, typeof why === 'function' ? why() : why);
    return Boolean(good);
  }
  same(found, wanted, what) {
    const [a, b] = [JSON.stringify(found), JSON.stringify(wanted)];
    return this.check(a === b, what, `found ${a}, wanted ${b}`);
  }
  figure(name, value) {
    console.log(`figure ${this.prefix}${name}: ${value}`);
  }
  /** A part of a run: what it throws is one failure, and the run goes on. */
  async part(what, run) {
    try {
      return await run();
    } catch (error) {
      this.notOk(what, error?.stack?.split('\n').slice(0, 12).join(' | ') ?? error);
      return undefined;
    }
  }
}
