import type { ReadResult } from 'zxing-wasm/reader';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import type { Outcome } from '../../src/basics/outcome.ts';
import { andThen, answer, problem } from '../../src/basics/outcome.ts';
import type { LabelScan } from '../../src/label/labelScan.ts';
import { labelScan } from '../../src/label/labelScan.ts';
import { pictureHead } from './pictureHead.ts';

/** A picture as pixels: red, green, blue and alpha of each, row by row from the top. */
export type Pixels = {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8ClampedArray | Uint8Array;
};

/** A symbol read from a picture: its text as a scanner would type it, and what the label says. */
export type SymbolRead = {
  readonly symbol: 'Data Matrix' | 'QR';
  readonly text: string;
  readonly label: LabelScan;
};

/** The largest picture file that is opened [bytes], and the largest picture [pixels]. */
export const MOST_PICTURE_BYTES = 20_000_000;
const MOST_PIXELS = 40_000_000;

/** More symbols than this are not on one label. */
const MOST_SYMBOLS = 8;

/**
 * Reads the symbol of a label, Data Matrix or QR, from a picture file (PNG, JPEG, GIF, BMP) or its pixels. Where the
 * picture shows several symbols, the one that names a battery is taken; of several batteries none is guessed. The
 * decoder must have been told first where its code is.
 */
export async function readSymbol(picture: Blob | Uint8Array | Pixels): Promise<Outcome<SymbolRead>> {
  if (picture instanceof Uint8Array) return fromFile(picture);
  if ('data' in picture) return fromPixels(picture);
  if (picture.size > MOST_PICTURE_BYTES) return tooManyBytes(picture.size);
  return fromFile(new Uint8Array(await picture.arrayBuffer()));
}

const refused = (because: Parameters<typeof problem>[1], given?: unknown): ReturnType<typeof problem> =>
  problem('badInput', because, 'the picture', given);

const tooManyBytes = (bytes: number) =>
  problem('outOfRange', 'pictureTooManyBytes', 'the picture', bytes, {
    limits: [1, MOST_PICTURE_BYTES / 1e6],
  });

async function fromFile(bytes: Uint8Array): Promise<Outcome<SymbolRead>> {
  if (bytes.length > MOST_PICTURE_BYTES) return tooManyBytes(bytes.length);
  const head = pictureHead(bytes);
  if (head === undefined) return refused('notAPicture');
  const wrong = sizeProblem(head.width, head.height);
  if (wrong !== undefined) return wrong;
  return head.isWhole ? symbolIn(bytes) : refused('pictureCutShort');
}

async function fromPixels({ width, height, data }: Pixels): Promise<Outcome<SymbolRead>> {
  const wrong = sizeProblem(width, height);
  if (wrong !== undefined) return wrong;
  if (!isCount(width) || !isCount(height) || data.length !== 4 * width * height)
    return refused('pictureCutShort');
  // Made of what the decoder looks at: nothing else of an ImageData is needed, and Node has none.
  return symbolIn({ width, height, data: data as Uint8ClampedArray } as ImageData);
}

const isCount = (size: number): boolean => Number.isInteger(size) && size > 0;

function sizeProblem(width: number, height: number): ReturnType<typeof problem> | undefined {
  if (!(width * height > MOST_PIXELS)) return undefined;
  return problem('outOfRange', 'pictureTooManyPixels', 'the picture', `${width} x ${height}`, {
    limits: [1, MOST_PIXELS / 1e6],
  });
}

async function symbolIn(picture: Uint8Array | ImageData): Promise<Outcome<SymbolRead>> {
  const found = await decoded(picture);
  if (found === undefined) return refused('pictureDamaged');
  if (found.length === 0) return problem('notEnoughData', 'noSymbolInPicture', 'the picture');
  const reads = found.map(labelled);
  const good = reads.flatMap((read) => (read.ok ? [read.value] : []));
  const named = good.filter(({ label }) => label.serial !== undefined);
  const serials = [...new Set(named.map(({ label }) => label.serial))];
  if (serials.length > 1)
    return problem('badInput', 'severalBatteriesInPicture', 'the picture', undefined, {
      more: { serials: serials.join(', ') },
    });
  const best = named[0] ?? good[0];
  return best === undefined ? reads[0]! : answer(best);
}

async function decoded(picture: Uint8Array | ImageData): Promise<readonly ReadResult[] | undefined> {
  // A decoder that can't be loaded is no fault of the picture, so it is waited for outside.
  await prepareZXingModule({ fireImmediately: true });
  try {
    const results = await readBarcodes(picture, {
      formats: ['DataMatrix', 'QRCode'],
      textMode: 'Plain',
      maxNumberOfSymbols: MOST_SYMBOLS,
      // Looked at in half, quarter size and so on as well: a blur is smaller there.
      downscaleThreshold: 150,
      downscaleFactor: 2,
    });
    // Without returnErrors the one result that is not valid says that the picture could not be opened.
    return results.some(({ isValid }) => !isValid) ? undefined : results;
  } catch (error) {
    if (error instanceof WebAssembly.RuntimeError) return undefined;
    throw error;
  }
}

function labelled({ symbology, symbologyIdentifier, text }: ReadResult): Outcome<SymbolRead> {
  const symbol = symbology === 'DataMatrix' ? 'Data Matrix' : 'QR';
  // A GS1 symbol is known by what scanners put before its text; here no scanner did, so nothing is told of it.
  return andThen(labelScan(`${symbologyIdentifier}${text}`), (scan) =>
    answer({ symbol, text, label: withoutFrame(scan) }),
  );
}

function withoutFrame(scan: LabelScan): LabelScan {
  const label = { ...scan };
  delete label.takenOff;
  return label;
}
