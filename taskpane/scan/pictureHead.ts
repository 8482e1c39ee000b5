/** What the first bytes of a picture file tell: its size, and whether its end is there. */
export type PictureHead = { readonly width: number; readonly height: number; readonly isWhole: boolean };

/** Size and wholeness of a PNG, JPEG, GIF or BMP file; undefined where it is none, or is cut before its size. */
export function pictureHead(bytes: Uint8Array): PictureHead | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const kind = KINDS.find(({ start }) => start.every((byte, index) => bytes[index] === byte));
  if (kind === undefined || bytes.length < kind.least) return undefined;
  const head = kind.read(view);
  return head !== undefined && head.width > 0 && head.height > 0 ? head : undefined;
}

type Kind = {
  readonly start: readonly number[];
  /** Bytes up to where the size has been told. */
  readonly least: number;
  readonly read: (view: DataView) => PictureHead | undefined;
};

const KINDS: readonly Kind[] = [
  { start: [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a], least: 33, read: pngHead },
  { start: [0xff, 0xd8, 0xff], least: 12, read: jpegHead },
  { start: [0x47, 0x49, 0x46, 0x38], least: 13, read: gifHead },
  { start: [0x42, 0x4d], least: 30, read: bmpHead },
];

const PNG_END = 0x49454e44;

function pngHead(view: DataView): PictureHead {
  let at = 8;
  // Chunk by chunk: length, name, contents, check sum.
  while (at + 12 <= view.byteLength && view.getUint32(at + 4) !== PNG_END) at += 12 + view.getUint32(at);
  return { width: view.getUint32(16), height: view.getUint32(20), isWhole: at + 12 <= view.byteLength };
}

const isJpegSize = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;
const JPEG_SCAN = 0xda;
const JPEG_END = 0xd9;

function jpegHead(view: DataView): PictureHead | undefined {
  let at = 2;
  let size: { width: number; height: number } | undefined;
  while (at + 9 <= view.byteLength && view.getUint8(at) === 0xff) {
    const marker = view.getUint8(at + 1);
    if (isJpegSize(marker)) size = { height: view.getUint16(at + 5), width: view.getUint16(at + 7) };
    if (marker === JPEG_SCAN) break;
    // A marker may be filled up with more of the same byte before it.
    at += marker === 0xff ? 1 : 2 + view.getUint16(at + 2);
  }
  return size === undefined ? undefined : { ...size, isWhole: hasJpegEnd(view, at) };
}

// In the picture's own bytes the end marker can't occur: there a zero follows every 0xff.
function hasJpegEnd(view: DataView, from: number): boolean {
  for (let at = from; at + 1 < view.byteLength; at += 1)
    if (view.getUint8(at) === 0xff && view.getUint8(at + 1) === JPEG_END) return true;
  return false;
}

const GIF_END = 0x3b;

function gifHead(view: DataView): PictureHead {
  const isWhole = view.getUint8(view.byteLength - 1) === GIF_END;
  return { width: view.getUint16(6, true), height: view.getUint16(8, true), isWhole };
}

function bmpHead(view: DataView): PictureHead {
  // A height below zero says that the first row is the top one.
  const height = Math.abs(view.getInt32(22, true));
  return { width: view.getInt32(18, true), height, isWhole: view.byteLength >= view.getUint32(2, true) };
}
