// figures.test.mjs: every example of the catalogue, computed by the WebAssembly module and by the shell, must agree;
// and the module refuses what the shell refuses.
import assert from 'node:assert/strict';
import { execFileSync, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { describe, it } from 'node:test';

import { load } from '../../wasm/flatwise.mjs';

const core = await load(readFileSync(process.env.FLATWISE_WASM));
const program = process.env.FLATWISE_PROGRAM;
const shell = (...args) => {
  // Status 1 is an answer too: something is out, or cannot be told.
  const { status, stdout, stderr, error } = spawnSync(program, args, { encoding: 'utf8' });
  assert.ok(!error && status !== null, String(error ?? stderr));
  return { status, json: JSON.parse(stdout) };
};

// Tolerance: the two C libraries' functions differ by units in the last place; 1e-12 relative leaves room for some
// thousands of them and is far below any printed digit.
const kRelative = 1e-12;
// Where a smooth least value lies is known only to about the square root of a rounding error (1.5e-8).
const kPlaceOfALeast = 1e-7;
const isPlaceOfALeast = (figure, path) => figure === 'tine-gap' && path === '/outputs/2/value/value_rad';

function agree(ours, theirs, path = '', figure = ours.figure) {
  if (typeof ours === 'number' && typeof theirs === 'number') {
    const difference = Math.abs(ours - theirs);
    const relative = isPlaceOfALeast(figure, path) ? kPlaceOfALeast : kRelative;
    assert.ok(difference <= relative * Math.max(Math.abs(ours), Math.abs(theirs), 1e-30), `${path}: ${ours} against ${theirs}`);
    return;
  }
  if (ours !== null && typeof ours === 'object') {
    assert.ok(theirs !== null && typeof theirs === 'object', path);
    assert.deepEqual(Object.keys(ours), Object.keys(theirs), path);
    for (const key of Object.keys(ours)) agree(ours[key], theirs[key], `${path}/${key}`, figure);
    return;
  }
  assert.equal(ours, theirs, path);
}

describe('the module', () => {
  const { figures } = JSON.parse(execFileSync(program, ['figure', '--json'], { encoding: 'utf8' }));

  it('knows the figures that the shell knows', () => {
    assert.ok(figures.length > 0);
    assert.deepEqual(core.catalogue(), figures);
  });
  for (const { name, example } of figures) {
    it(`computes ${name} as the shell does`, () => {
      const { status, json } = shell('figure', name, ...example.inputs, '--json');
      assert.ok(status <= 1, 'the example is answered');
      agree(core.figure(name, example.inputs), json);
    });
  }
  it('agrees in inches too', () => {
    const { name, example } = figures[0];
    agree(core.figure(name, example.inputs, 1), shell('figure', name, ...example.inputs, '--json', '--inch').json);
  });
  it('names the near figure when one is misspelt', () => {
    const { problems } = core.figure(`${figures[0].name}x`, []);
    assert.equal(problems.length, 1);
    assert.ok(problems[0].mend.includes(figures[0].name));
  });
  it('refuses what the shell refuses, in the same words', () => {
    const { name } = figures[0];
    const { status, json } = shell('figure', name, 'no-such-input=1 mm', '--json');
    assert.equal(status, 2);
    assert.deepEqual(core.figure(name, ['no-such-input=1 mm']), json);
  });
  it('gives its memory back', () => {
    const { name, example } = figures[0];
    core.figure(name, example.inputs);
    const before = core.exports.memory.buffer.byteLength;
    for (let i = 0; i < 2000; ++i) core.figure(name, example.inputs);
    assert.ok(core.exports.memory.buffer.byteLength - before <= 2 * 65536);
  });
  it('would not agree if a number differed in the eleventh digit', () => {
    assert.throws(() => agree({ a: 1 }, { a: 1 + 1e-11 }));
    assert.throws(() => agree({ a: [1, 2] }, { a: [1] }));
  });
});
