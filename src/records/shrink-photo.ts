import type { PhotoRow } from './photo.ts';

/** Longest side a kept photo has, pixels: enough to see a crimp on a string end, small enough to send. */
const LONGEST_PX = 1600;
const JPEG_QUALITY = 0.8;

/**
 * A camera's picture made small enough to keep, as JPEG.
 * @throws Error in plain words where the file is no picture the browser can read
 */
export async function shrinkPhoto(file: Blob): Promise<Pick<PhotoRow, 'type' | 'bytes'>> {
  const picture = await createImageBitmap(file).catch(() => {
    throw new Error('That file is no picture this tablet can read. Take the photo again.');
  });
  const scale = Math.min(1, LONGEST_PX / Math.max(picture.width, picture.height));
  const canvas = new OffscreenCanvas(
    Math.max(1, Math.round(picture.width * scale)),
    Math.max(1, Math.round(picture.height * scale)),
  );
  const pen = canvas.getContext('2d');
  if (!pen) throw new Error('This tablet cannot make the photo smaller, so it was not kept.');
  pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  const small = await canvas.convertToBlob({ type: 'image/jpeg', quality: JPEG_QUALITY });
  return { type: 'image/jpeg', bytes: new Uint8Array(await small.arrayBuffer()) };
}
