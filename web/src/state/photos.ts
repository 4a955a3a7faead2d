// photos.ts: a photo from the camera, made small enough to send from a barn.
import { hexOf, kLongestSide, photoSize } from '../lib/photo';
import { sha256 } from '../lib/sha256';

export interface Photo {
  readonly hash: string;
  readonly blob: Blob;
}

const kQuality = 0.85;

/** As JPEG of at most 2048 px with its SHA-256. Places and times that the camera wrote into the file do not stay in it. */
export async function makePhoto(file: File): Promise<Photo> {
  const picture = await createImageBitmap(file, { imageOrientation: 'from-image' });
  const size = photoSize(picture.width, picture.height, kLongestSide);
  const canvas = document.createElement('canvas');
  canvas.width = size.width;
  canvas.height = size.height;
  canvas.getContext('2d')!.drawImage(picture, 0, 0, size.width, size.height);
  picture.close();
  const blob = await new Promise<Blob>((resolve, reject) =>
    canvas.toBlob((made) => (made ? resolve(made) : reject(new Error('no JPEG from the canvas'))), 'image/jpeg', kQuality));
  return { blob, hash: await hashOf(blob) };
}

export async function hashOf(blob: Blob): Promise<string> {
  const bytes = new Uint8Array(await blob.arrayBuffer());
  const own = globalThis.crypto.subtle as SubtleCrypto | undefined;
  return hexOf(own ? new Uint8Array(await own.digest('SHA-256', bytes)) : sha256(bytes));
}
