import bwip from 'bwip-js/node';
import type { Pixels } from '../../taskpane/scan/readSymbol.ts';

/** A picture of grey values 0 to 1, row by row. */
export type Grey = {
  readonly width: number;
  readonly height: number;
  readonly at: (x: number, y: number) => number;
};

/** The squares of a symbol with a white margin, each so many pixels wide. */
export function drawn(kind: 'datamatrix' | 'qrcode' | 'gs1datamatrix', text: string, pixels = 6): Grey {
  const [symbol] = bwip.raw(kind, text, { parse: true } as never) as unknown as {
    pixs: number[];
    pixx: number;
    pixy: number;
  }[];
  const { pixs, pixx, pixy } = symbol!;
  const margin = 4;
  const isDark = (x: number, y: number): boolean =>
    x >= 0 && y >= 0 && x < pixx && y < pixy && pixs[y * pixx + x] === 1;
  return {
    width: (pixx + 2 * margin) * pixels,
    height: (pixy + 2 * margin) * pixels,
    at: (x, y) => (isDark(Math.floor(x / pixels) - margin, Math.floor(y / pixels) - margin) ? 0 : 1),
  };
}

/** A picture turned about its middle by an angle [degrees], on white. */
export function turned(grey: Grey, degrees: number): Grey {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const width = Math.ceil(Math.abs(grey.width * cos) + Math.abs(grey.height * sin));
  const height = Math.ceil(Math.abs(grey.width * sin) + Math.abs(grey.height * cos));
  const at = (x: number, y: number): number => {
    const [dx, dy] = [x + 0.5 - width / 2, y + 0.5 - height / 2];
    const [u, v] = [cos * dx + sin * dy + grey.width / 2, cos * dy - sin * dx + grey.height / 2];
    return u >= 0 && v >= 0 && u < grey.width && v < grey.height ? grey.at(Math.floor(u), Math.floor(v)) : 1;
  };
  return { width, height, at };
}

/** A picture in which each pixel is the mean of those around it. */
export function blurred({ width, height, at }: Grey, reach: number): Grey {
  const mean = (x: number, y: number): number => {
    let sum = 0;
    for (let v = y - reach; v <= y + reach; v += 1)
      for (let u = x - reach; u <= x + reach; u += 1)
        sum += u >= 0 && v >= 0 && u < width && v < height ? at(u, v) : 1;
    return sum / (2 * reach + 1) ** 2;
  };
  return { width, height, at: mean };
}

/** Two pictures beside each other. */
export function beside(one: Grey, other: Grey): Grey {
  const height = Math.max(one.height, other.height);
  const at = (x: number, y: number): number => {
    const [grey, u] = x < one.width ? [one, x] : [other, x - one.width];
    return y < grey.height ? grey.at(u, y) : 1;
  };
  return { width: one.width + other.width, height, at };
}

/** The pixels of a picture. */
export function pixelsOf({ width, height, at }: Grey): Pixels {
  const data = new Uint8ClampedArray(4 * width * height).fill(255);
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1)
      data.fill(255 * at(x, y), 4 * (y * width + x), 4 * (y * width + x) + 3);
  return { width, height, data };
}

/** A picture file (PNG) of a symbol. */
export async function pngOf(kind: 'datamatrix' | 'qrcode', text: string): Promise<Uint8Array> {
  const drawing = { bcid: kind, text, parse: true, scale: 4, padding: 10, backgroundcolor: 'FFFFFF' };
  return new Uint8Array(await bwip.toBuffer(drawing));
}
