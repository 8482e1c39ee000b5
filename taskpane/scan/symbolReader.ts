import { prepareZXingModule } from 'zxing-wasm/reader';
// The bundler puts the decoder's code beside our own and tells its address.
import decoderAddress from 'zxing-wasm/reader/zxing_reader.wasm';

// Without this the decoder would be fetched from a server of its maker's choice.
prepareZXingModule({ overrides: { locateFile: () => decoderAddress } });

/** Loads the decoder; fails where its code does not come or may not be compiled. */
export async function startReader(): Promise<void> {
  await prepareZXingModule({ fireImmediately: true });
}

export { onWhite } from './onWhite.ts';
export { readSymbol } from './readSymbol.ts';
export type { Pixels, SymbolRead } from './readSymbol.ts';
