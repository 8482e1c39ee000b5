import type { Pixels } from './readSymbol.ts';

/**
 * A picture on white, as pixels: the decoder takes what is transparent for black, and a drawn symbol often has no
 * ground of its own.
 * @returns the pixels, or undefined where this machine has no canvas without a page, or can't open the picture
 */
export async function onWhite(picture: Uint8Array): Promise<Pixels | undefined> {
  if (typeof OffscreenCanvas === 'undefined') return undefined;
  const bitmap = await createImageBitmap(new Blob([picture as BlobPart])).catch(() => undefined);
  if (bitmap === undefined) return undefined;
  const { width, height } = bitmap;
  const brush = new OffscreenCanvas(width, height).getContext('2d');
  if (brush === null) return undefined;
  brush.fillStyle = 'white';
  brush.fillRect(0, 0, width, height);
  brush.drawImage(bitmap, 0, 0);
  bitmap.close();
  return { width, height, data: brush.getImageData(0, 0, width, height).data };
}
