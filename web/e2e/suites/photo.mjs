// photo.mjs: a photo's whole way: from the camera to the server by the hash of its bytes, back onto the sheet, into the hand-over
// record; and what is no photo, is cut short or is too large: said, and nothing kept.
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { Hand } from '../lib/hand.mjs';
import { wordsOf } from '../lib/paper.mjs';

const longest = 2048;  // As web/src/lib/photo.ts keeps it.
const hashOf = (bytes) => createHash('sha256').update(bytes).digest('hex');
const flat = (text) => text.replace(/\s+/g, ' ').trim();

/** A picture as a camera of that size writes it. */
async function taken(browser, width, height, type = 'image/jpeg') {
  const page = await browser.newPage();
  const base64 = await page.evaluate(async ([w, h, as]) => {
    const canvas = new OffscreenCanvas(w, h);
    const pen = canvas.getContext('2d');
    for (let i = 0; i < 40; i += 1) { pen.fillStyle = `hsl(${i * 37} 60% 50%)`; pen.fillRect((i * 97) % w, (i * 61) % h, w / 5, h / 7); }
    const bytes = new Uint8Array(await (await canvas.convertToBlob({ type: as, quality: 0.9 })).arrayBuffer());
    let text = '';
    for (const byte of bytes) text += String.fromCharCode(byte);
    return btoa(text);
  }, [width, height, type]);
  await page.close();
  return Buffer.from(base64, 'base64');
}

/** Every file below the folder of the record that holds a photo. */
function kept(server) {
  const files = [];
  const look = (folder) => {
    for (const name of existsSync(folder) ? readdirSync(folder) : []) {
      const path = join(folder, name);
      if (statSync(path).isDirectory()) look(path);
      else files.push(path);
    }
  };
  look(join(server.data, 'blobs'));
  return files;
}

async function choose(hand, file) {
  await hand.sheet.locator('.photos input[type=file]').setInputFiles(file);
  await hand.page.waitForTimeout(400);
  await hand.quiet();
}
const photosIn = async (server, job) => (await server.entries(job)).filter((entry) => entry.body.kind === 'photo_taken');

async function goodPhoto(report, hand, server, browser, job) {
  const before = kept(server).length;
  const camera = { name: 'IMG_0001.jpg', mimeType: 'image/jpeg', buffer: await taken(browser, 3000, 1500) };
  await hand.sheet.getByLabel('What it shows').fill('Rust behind the seal of rotor 5');
  const sent = hand.page.waitForRequest((request) => request.method() === 'PUT' && /\/api\/blobs\//.test(request.url()));
  await choose(hand, camera);
  const hash = /blobs\/([0-9a-f]{64})/.exec((await sent).url())?.[1];
  const [entry] = await photosIn(server, job);
  report.same(entry?.body.blob, hash, 'the entry names the photo by the hash it was sent under');
  report.same([entry?.body.type, entry?.body.says, entry?.body.part], ['image/jpeg', 'Rust behind the seal of rotor 5', { part: 'rotor', number: 5 }], 'the entry says what it shows, and of which part');
  const bytes = await server.get(`/api/blobs/${hash}`, 'bytes');
  report.same(hashOf(bytes), hash, 'the server gives back the bytes of that hash');
  report.check(bytes.length < camera.buffer.length, 'it was made smaller on the device', `${bytes.length} of ${camera.buffer.length} bytes`);
  report.same(kept(server).length, before + 1, 'one file more in the record');
  return { camera, hash, entry };
}

async function shown(report, hand, hash, says) {
  await hand.page.reload();  // From the server now, not from the device.
  await hand.quiet();
  const image = hand.sheet.locator('.photos img').first();
  await image.scrollIntoViewIfNeeded();
  await hand.page.waitForFunction((img) => img.complete && img.naturalWidth > 0, await image.elementHandle());
  report.same(await image.evaluate((img) => [new URL(img.src).pathname, img.naturalWidth, img.naturalHeight]), [`/api/blobs/${hash}`, longest, longest / 2], 'it shows on the sheet of its part, its longer side made 2048 px');
  report.same(await image.getAttribute('alt'), says, 'and is read aloud by what it shows');
}

async function twice(report, hand, server, job, camera, hash) {
  const before = kept(server).length;
  await choose(hand, camera);
  const entries = await photosIn(server, job);
  report.same(entries.map((entry) => entry.body.blob), [hash, hash], 'the same photo once more is a second entry of the same photo');
  report.same(kept(server).length, before, 'and is stored once');
}

/** What the page is given and cannot use: it says so, and keeps nothing. */
async function noPhoto(report, hand, server, job, buffer) {
  const cases = [['a text', { name: 'notes.txt', mimeType: 'text/plain', buffer: Buffer.from('no picture') }],
    ['a text that is called a photo', { name: 'IMG_0002.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('no picture') }],
    ['a photo cut short in its head', { name: 'IMG_0003.jpg', mimeType: 'image/jpeg', buffer: buffer.subarray(0, 200) }],
    ['an empty file', { name: 'IMG_0004.jpg', mimeType: 'image/jpeg', buffer: Buffer.alloc(0) }]];
  for (const [what, file] of cases) {
    const before = [(await server.entries(job)).length, kept(server).length];
    await choose(hand, file);
    const said = flat(await hand.sheet.locator('.photos [role=status]').innerText());
    report.check(/cannot be read as a picture/.test(said), `${what}: the page says that it is none`, said || 'nothing is said');
    report.same([(await server.entries(job)).length, kept(server).length], before, `${what}: nothing is kept`);
  }
}

/** What a device could send all the same. */
async function refusedByTheServer(report, server, buffer) {
  const put = (bytes, hash, type = 'image/jpeg') => fetch(`${server.base}/api/blobs/${hash}`, { method: 'PUT', headers: { 'Content-Type': type, Origin: server.base }, body: bytes }).then((reply) => reply.status, () => 'closed');
  const before = kept(server).length;
  const large = Buffer.concat([buffer, Buffer.alloc(2 ** 26)]);
  report.check([413, 'closed'].includes(await put(large, hashOf(large))), 'a photo that is too large is refused', '');
  report.same(await put(buffer.subarray(0, buffer.length - 100), hashOf(buffer)), 422, 'a photo cut short on its way is not the photo of that hash');
  report.same(await put(buffer, hashOf(buffer), 'image/png'), 415, 'a photo of another type than it says is refused');
  report.same(await put(Buffer.from('<svg/>'), hashOf('<svg/>'), 'image/svg+xml'), 415, 'a drawing with script in it is no photo');
  report.same(kept(server).length, before, 'nothing of these is kept');
}

export async function photo(report, browser, server) {
  const job = (await server.get('/api/jobs')).jobs.find((one) => one.number === '32').id;
  const person = (await server.get('/api/people')).people.find((one) => one.role === 'bench').id;
  const hand = await Hand.at(browser, server.base, 'tablet', { person });
  try {
    const view = await server.get(`/api/jobs/${job}/bench?stage=booking_in`);
    await hand.go(`/job/${job}?stage=booking_in&station=${view.strip.stations.find((one) => one.name === '5').index}`);
    const { camera, hash, entry } = await goodPhoto(report, hand, server, browser, job);
    await shown(report, hand, hash, entry.body.says);
    await twice(report, hand, server, job, camera, hash);
    await noPhoto(report, hand, server, job, camera.buffer);
    await refusedByTheServer(report, server, camera.buffer);
    const paper = flat(wordsOf(await server.get(`/api/jobs/${job}/sheets/hand-over`, 'bytes')));
    report.check(paper.includes('Rust behind the seal of rotor 5'), 'the hand-over record names the photo by what it shows', () => paper.slice(0, 600));
    report.same(hand.complaints, [], 'the browser complains of nothing');
  } finally {
    await hand.context.close();
  }
}
