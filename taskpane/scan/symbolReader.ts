import { prepareZXingModule } from 'zxing-wasm/reader';
// The bundler puts the decoder's code beside our own and tells its address.
import decoderAddress from 'zxing-wasm/reader/zxing_reader.wasm';

// Without this the decoder would be fetched from a server of its maker's choice.
prepareZXingModule({ overrides: { locateFile: () => decoderAddress } });

export { readSymbol } from './readSymbol.ts';
export type { Pixels, SymbolRead } from './readSymbol.ts';
