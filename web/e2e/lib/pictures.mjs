// pictures.mjs: one picture a stage, made while the job is done. At FLATWISE_WRITE_PAGES=1 those of the tablet go to
// docs/pictures/page, small; FLATWISE_PICTURES names a folder for all of them, as they are.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './server.mjs';

const most = 60_000;

/** Told of each stage; keeps the first picture of each. Undefined where nobody asked for any. */
export function gallery(size) {
  const folder = process.env['FLATWISE_PICTURES'];
  const pages = process.env['FLATWISE_WRITE_PAGES'] === '1' && size === 'tablet';
  if (!folder && !pages) return undefined;
  const made = new Set();
  return async (hand, name) => {
    if (made.has(name)) return;
    made.add(name);
    await hand.page.evaluate(() => scrollTo(0, 0));
    const png = await hand.page.screenshot({ animations: 'disabled' });
    if (folder) {
      mkdirSync(folder, { recursive: true });
      writeFileSync(join(folder, `${name}-${size}.png`), png);
    }
    if (pages) await writeSmall(hand, png, name);
  };
}

async function writeSmall(hand, png, name) {
  const folder = join(root, 'docs/pictures/page');
  mkdirSync(folder, { recursive: true });
  // The browser itself makes it small: no other program is wanted.
  const blank = await hand.context.browser().newPage();
  const webp = await blank.evaluate(async (base64) => {
    const bitmap = await createImageBitmap(new Blob([Uint8Array.from(atob(base64), (c) => c.charCodeAt(0))], { type: 'image/png' }));
    const canvas = new OffscreenCanvas(Math.round(bitmap.width * 0.75), Math.round(bitmap.height * 0.75));
    canvas.getContext('2d').drawImage(bitmap, 0, 0, canvas.width, canvas.height);
    const bytes = new Uint8Array(await (await canvas.convertToBlob({ type: 'image/webp', quality: 0.7 })).arrayBuffer());
    return btoa(bytes.reduce((text, byte) => text + String.fromCharCode(byte), ''));
  }, png.toString('base64'));
  await blank.close();
  const bytes = Buffer.from(webp, 'base64');
  if (bytes.length > most) throw new Error(`${name}: ${bytes.length} bytes, more than ${most}`);
  writeFileSync(join(folder, `${name}.webp`), bytes);
}
