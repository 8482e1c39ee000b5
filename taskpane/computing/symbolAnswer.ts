import type { Outcome } from '../../src/basics/outcome.ts';
import type { SymbolRead } from '../scan/readSymbol.ts';
import type { Memory } from './memory.ts';

/** The text of the symbol in a picture. The decoder is fetched with the first picture, for most never bring one. */
export async function symbolAnswer(_memory: Memory, picture: Uint8Array): Promise<Outcome<SymbolRead>> {
  const { readSymbol } = await import(/* webpackChunkName: "symbol" */ '../scan/symbolReader.ts');
  return readSymbol(picture);
}
