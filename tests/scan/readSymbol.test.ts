import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { beforeAll, describe, expect, it } from 'vitest';
import { prepareZXingModule } from 'zxing-wasm/reader';
import { labelScan } from '../../src/label/labelScan.ts';
import { pictureHead } from '../../taskpane/scan/pictureHead.ts';
import { MOST_PICTURE_BYTES, readSymbol } from '../../taskpane/scan/readSymbol.ts';
import { refusal, valueOf } from '../electrochemistry/outcomes.ts';
import type { Grey } from './drawnSymbol.ts';
import { beside, blurred, drawn, pixelsOf, pngOf, turned } from './drawnSymbol.ts';

beforeAll(() => {
  const file = createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm');
  prepareZXingModule({ overrides: { wasmBinary: readFileSync(file).buffer as ArrayBuffer } });
});

/** A label as the drawing program spells it, and as it is read. */
const label = (serial: string): string =>
  `[)>^03006^02917V9ZZ98^0291PBX6T-100^029S${serial}^02916D20240311^030^004`;
const LABEL = label('S0001234');

const looks: readonly (readonly [string, (grey: Grey) => Grey])[] = [
  ['straight', (grey) => grey],
  ['turned by 90 degrees', (grey) => turned(grey, 90)],
  ['turned by 17 degrees', (grey) => turned(grey, 17)],
  ['turned upside down', (grey) => turned(grey, 180)],
  ['blurred', (grey) => blurred(grey, 2)],
  ['turned by 17 degrees and blurred', (grey) => blurred(turned(grey, 17), 2)],
];

describe.each(['datamatrix', 'qrcode'] as const)('a symbol drawn as %s', (kind) => {
  it.each(looks)('is read %s', async (_, look) => {
    const read = valueOf(await readSymbol(pixelsOf(look(drawn(kind, LABEL)))));
    expect(read.symbol).toBe(kind === 'qrcode' ? 'QR' : 'Data Matrix');
    expect(read.label).toMatchObject({ serial: 'S0001234', maker: '9ZZ98', part: 'BX6T-100' });
    expect(read.label).toEqual(valueOf(labelScan(read.text)));
  });

  it('is read from a picture file, as bytes and as a blob', async () => {
    const bytes = await pngOf(kind, LABEL);
    const blob = new Blob([bytes as Uint8Array<ArrayBuffer>], { type: 'image/png' });
    for (const picture of [bytes, blob])
      expect(valueOf(await readSymbol(picture)).label.serial).toBe('S0001234');
  });

  it('may hold a bare serial', async () => {
    const read = valueOf(await readSymbol(pixelsOf(drawn(kind, 'A100234'))));
    expect(read).toMatchObject({ text: 'A100234', label: { serial: 'A100234', readAs: 'bare serial' } });
  });
});

describe('a picture of labels', () => {
  it('is read as a GS1 symbol where it is one', async () => {
    const gs1 = pixelsOf(drawn('gs1datamatrix', '(01)04012345123456(21)0001234'));
    expect(valueOf(await readSymbol(gs1)).label).toMatchObject({
      readAs: 'GS1 element string',
      serial: '0001234',
    });
  });

  it('with a stock number beside the serial gives the serial', async () => {
    const both = beside(drawn('qrcode', '6140-99-000-0123'), drawn('datamatrix', LABEL));
    expect(valueOf(await readSymbol(pixelsOf(both))).label.serial).toBe('S0001234');
  });

  it('of two batteries is refused, not guessed', async () => {
    const both = beside(drawn('datamatrix', label('A1')), drawn('qrcode', label('A2')));
    const [kind, text] = refusal(await readSymbol(pixelsOf(both)));
    expect(kind).toBe('badInput');
    expect(text).toMatch(/several batteries \(serials A[12], A[12]\): cut it to one/);
  });

  it('whose symbol is no label is refused as its text would be', async () => {
    const text = 'what is this?';
    expect(refusal(await readSymbol(pixelsOf(drawn('qrcode', text))))).toEqual(refusal(labelScan(text)));
  });
});

/** The head of a PNG that says how large it is. */
function pngHead(width: number, height: number): Uint8Array {
  const bytes = new Uint8Array(33);
  bytes.set([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52]);
  const view = new DataView(bytes.buffer);
  view.setUint32(16, width);
  view.setUint32(20, height);
  return bytes;
}

describe('a hostile picture is refused in words', () => {
  const words = async (picture: Parameters<typeof readSymbol>[0]): Promise<string> =>
    refusal(await readSymbol(picture))[1];

  it('over 40 million pixels, before it is opened', async () => {
    expect(await words(pngHead(60_000, 60_000))).toMatch(
      /60000 x 60000 pixels; allowed are up to 40 million/,
    );
    const claimed = { width: 1e9, height: 1e9, data: new Uint8ClampedArray(4) };
    expect(await words(claimed)).toMatch(/40 million/);
  });

  it('over 20 MB', async () => {
    expect(await words(new Uint8Array(MOST_PICTURE_BYTES + 1))).toMatch(/20\.0 MB; allowed are up to 20 MB/);
    expect(await words(new Blob([new Uint8Array(MOST_PICTURE_BYTES + 1)]))).toMatch(/up to 20 MB/);
  });

  it('cut short, wherever it is cut', async () => {
    const bytes = await pngOf('datamatrix', LABEL);
    for (const end of [40, 100, bytes.length >> 1, bytes.length - 13])
      expect(await words(bytes.slice(0, end))).toMatch(/cut short/);
    expect(await words(bytes.slice(0, 20))).toMatch(/is not a picture/);
    const pixels = pixelsOf(drawn('datamatrix', LABEL));
    expect(await words({ ...pixels, data: pixels.data.slice(0, 999) })).toMatch(/cut short/);
    expect(await words({ width: -4, height: -1, data: new Uint8ClampedArray(16) })).toMatch(/cut short/);
    expect(await words({ width: Number.NaN, height: 1, data: new Uint8ClampedArray(4) })).toMatch(
      /cut short/,
    );
  });

  it('damaged inside', async () => {
    const bytes = await pngOf('datamatrix', LABEL);
    // Compressed pixels with no sense in them.
    bytes.fill(7, bytes.length - 120, bytes.length - 20);
    expect(await words(bytes)).toMatch(/damaged/);
  });

  it('no picture at all', async () => {
    for (const text of ['', 'not a picture', '<svg xmlns="http://www.w3.org/2000/svg"/>', '%PDF-1.7'])
      expect(await words(new TextEncoder().encode(text))).toMatch(/is not a picture/);
  });

  it('without a symbol', async () => {
    const grey: Grey = { width: 300, height: 200, at: (x, y) => ((x * 7 + y * 13) % 29) / 29 };
    expect(await words(pixelsOf(grey))).toMatch(/no Data Matrix or QR symbol was found/);
  });

  it('and a good one is read after all of them', async () => {
    expect(valueOf(await readSymbol(await pngOf('qrcode', LABEL))).label.serial).toBe('S0001234');
  });
});

describe('the head of a picture file', () => {
  const head = (...bytes: number[]) => pictureHead(Uint8Array.from(bytes));
  const JPEG = [
    ...[0xff, 0xd8, 0xff, 0xe0, 0, 4, 1, 1],
    ...[0xff, 0xc0, 0, 11, 8, 0, 200, 1, 44, 1, 1, 0x11, 0],
    ...[0xff, 0xda, 0, 8, 1, 1, 0, 0, 63, 0, 0x12, 0xff, 0, 0x34],
  ];

  it('of a JPEG is told from its size marker, and its end from its end marker', () => {
    expect(head(...JPEG, 0xff, 0xd9)).toEqual({ width: 300, height: 200, isWhole: true });
    expect(head(...JPEG)).toEqual({ width: 300, height: 200, isWhole: false });
    expect(head(...JPEG.slice(0, 12))).toBeUndefined();
  });

  it('of a GIF', () => {
    const gif = [0x47, 0x49, 0x46, 0x38, 0x39, 0x61, 44, 1, 200, 0, 0, 0, 0];
    expect(head(...gif, 0x3b)).toEqual({ width: 300, height: 200, isWhole: true });
    expect(head(...gif, 0)!.isWhole).toBe(false);
  });

  it('of a BMP, whose rows may stand from the top', () => {
    const bytes = new Uint8Array(60);
    const view = new DataView(bytes.buffer);
    bytes.set([0x42, 0x4d]);
    view.setUint32(2, 60, true);
    view.setInt32(18, 300, true);
    view.setInt32(22, -200, true);
    expect(pictureHead(bytes)).toEqual({ width: 300, height: 200, isWhole: true });
    expect(pictureHead(bytes.slice(0, 50))!.isWhole).toBe(false);
  });

  it('of a picture of no size is none', () => {
    expect(pictureHead(pngHead(0, 10))).toBeUndefined();
  });
});
