/**
 * The parts of an .xlsx file. What is not changed stays packed as it was; compression is the platform's own.
 */
export type Package = Map<string, Part>;

type Part = {
  /** How the bytes are packed: 0 not at all, 8 deflated. */
  readonly method: number;
  readonly checksum: number;
  readonly size: number;
  readonly packed: Uint8Array;
};

const END = 0x06054b50;
const ENTRY = 0x02014b50;
const LOCAL = 0x04034b50;
const DEFLATED = 8;

/** Takes a file apart. Throws where it isn't one: ask the reader of workbooks first. */
export function openPackage(bytes: Uint8Array): Package {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = endOf(view);
  const parts: Package = new Map();
  let at = view.getUint32(end + 16, true);
  for (let left = view.getUint16(end + 10, true); left > 0; left -= 1) {
    if (view.getUint32(at, true) !== ENTRY) throw new Error('The directory of the file is damaged');
    const [name, extra, comment] = [28, 30, 32].map((offset) => view.getUint16(at + offset, true));
    const path = new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + name!));
    if (!path.endsWith('/')) parts.set(path, partAt(bytes, view, at));
    at += 46 + name! + extra! + comment!;
  }
  return parts;
}

function endOf(view: DataView): number {
  for (let at = view.byteLength - 22; at >= 0; at -= 1) if (view.getUint32(at, true) === END) return at;
  throw new Error('The file has no directory');
}

function partAt(bytes: Uint8Array, view: DataView, entry: number): Part {
  const local = view.getUint32(entry + 42, true);
  const start = local + 30 + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
  return {
    method: view.getUint16(entry + 10, true),
    checksum: view.getUint32(entry + 16, true),
    size: view.getUint32(entry + 24, true),
    packed: bytes.subarray(start, start + view.getUint32(entry + 20, true)),
  };
}

/** The bytes of a part, or undefined where there is none of that name. */
export async function partBytes(parts: Package, path: string): Promise<Uint8Array | undefined> {
  const part = parts.get(path);
  if (part === undefined || part.method !== DEFLATED) return part?.packed;
  return through(part.packed, new DecompressionStream('deflate-raw'));
}

// A large sheet is looked at several times while it is saved; unpacking it takes longer than anything else.
const texts = new WeakMap<Part, string>();

/** The text of a part, or undefined where there is none of that name. */
export async function partText(parts: Package, path: string): Promise<string | undefined> {
  const part = parts.get(path);
  if (part === undefined) return undefined;
  const text = texts.get(part) ?? decoded((await partBytes(parts, path))!);
  texts.set(part, text);
  return text;
}

function decoded(bytes: Uint8Array): string {
  const wide = bytes[0] === 0xff && bytes[1] === 0xfe;
  return new TextDecoder(wide ? 'utf-16le' : 'utf-8').decode(bytes);
}

/** Puts a part of text in, in place of the one of that name. */
export async function putText(parts: Package, path: string, text: string): Promise<void> {
  const bytes = new TextEncoder().encode(text.replace(/^(<\?xml[^>]*encoding=")utf-16(")/i, '$1UTF-8$2'));
  const packed = await through(bytes, new CompressionStream('deflate-raw'));
  const part: Part = { method: DEFLATED, checksum: checksumOf(bytes), size: bytes.length, packed };
  texts.set(part, text);
  parts.set(path, part);
}

async function through(
  bytes: Uint8Array,
  stream: CompressionStream | DecompressionStream,
): Promise<Uint8Array> {
  const whole = new Blob([bytes as Uint8Array<ArrayBuffer>]).stream().pipeThrough(stream);
  return new Uint8Array(await new Response(whole).arrayBuffer());
}

const REMAINDERS = Uint32Array.from({ length: 256 }, (_, byte) => {
  let remainder = byte;
  for (let bit = 0; bit < 8; bit += 1)
    remainder = remainder & 1 ? (remainder >>> 1) ^ 0xedb88320 : remainder >>> 1;
  return remainder;
});

function checksumOf(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (const byte of bytes) sum = (sum >>> 8) ^ REMAINDERS[(sum ^ byte) & 0xff]!;
  return (sum ^ 0xffffffff) >>> 0;
}

// 1 January 1980: the same parts give the same bytes.
const MOMENT = 0x00210000;
const UTF8_NAMES = 0x0800;

/** Puts a file together again. */
export function packageBytes(parts: Package): Uint8Array {
  const entries = [...parts].map(([path, part]) => ({ name: new TextEncoder().encode(path), part }));
  const [bodies, directory]: [Uint8Array[], Uint8Array[]] = [[], []];
  let at = 0;
  for (const { name, part } of entries) {
    const local = fields([[LOCAL, 4], [20, 2], ...commonFields(name, part)]);
    bodies.push(local, name, part.packed);
    directory.push(
      fields([
        [ENTRY, 4],
        [20, 2],
        [20, 2],
        ...commonFields(name, part),
        [0, 2],
        [0, 2],
        [0, 2],
        [0, 4],
        [at, 4],
      ]),
      name,
    );
    at += local.length + name.length + part.packed.length;
  }
  const size = directory.reduce((sum, piece) => sum + piece.length, 0);
  const count = entries.length;
  const end = fields([
    [END, 4],
    [0, 4],
    [count, 2],
    [count, 2],
    [size, 4],
    [at, 4],
    [0, 2],
  ]);
  return joined([...bodies, ...directory, end]);
}

type Field = readonly [value: number, bytes: 2 | 4];

const commonFields = (name: Uint8Array, part: Part): Field[] => [
  [UTF8_NAMES, 2],
  [part.method, 2],
  [MOMENT, 4],
  [part.checksum, 4],
  [part.packed.length, 4],
  [part.size, 4],
  [name.length, 2],
  [0, 2],
];

function fields(list: readonly Field[]): Uint8Array {
  const view = new DataView(new ArrayBuffer(list.reduce((sum, [, bytes]) => sum + bytes, 0)));
  let at = 0;
  for (const [value, bytes] of list) {
    if (bytes === 2) view.setUint16(at, value, true);
    else view.setUint32(at, value, true);
    at += bytes;
  }
  return new Uint8Array(view.buffer);
}

function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
