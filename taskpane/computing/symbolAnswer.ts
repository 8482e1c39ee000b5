import type { Outcome } from '../../src/basics/outcome.ts';
import { problem } from '../../src/basics/outcome.ts';
import type { SymbolRead } from '../scan/readSymbol.ts';
import type * as SymbolReader from '../scan/symbolReader.ts';
import type { Memory } from './memory.ts';

/** The text of the symbol in a picture. The decoder is fetched with the first picture, for most never bring one. */
export async function symbolAnswer(_memory: Memory, picture: Uint8Array): Promise<Outcome<SymbolRead>> {
  const reader = await startedReader();
  if (reader === undefined) return problem('missing', 'noPictureReader', 'the picture');
  const read = await reader.readSymbol(picture);
  if (read.ok || read.problem.because !== 'noSymbolInPicture') return read;
  const pixels = await reader.onWhite(picture);
  return pixels === undefined ? read : reader.readSymbol(pixels);
}

/** The decoder, or undefined where it can't be had: rules of the place may forbid compiled code. */
async function startedReader(): Promise<typeof SymbolReader | undefined> {
  try {
    const reader = await import(/* webpackChunkName: "symbol" */ '../scan/symbolReader.ts');
    await reader.startReader();
    return reader;
  } catch {
    return undefined;
  }
}
