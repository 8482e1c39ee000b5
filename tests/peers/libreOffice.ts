import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { deflateRawSync, inflateRawSync } from 'node:zlib';
import { parseCsv } from 'hucre/csv';

/** All sheets as text files, numbers as they are and not as shown. */
const ALL_SHEETS = 'csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1';

/** The cells of a sheet of a workbook as LibreOffice has them. */
export function sheetByLibreOffice(bytes: Uint8Array, sheet: string): string[][] {
  return sheetsByLibreOffice(bytes, [sheet])[0]!;
}

/** The cells of some sheets of a workbook as LibreOffice has them. */
export function sheetsByLibreOffice(bytes: Uint8Array, sheets: readonly string[]): string[][][] {
  const folder = convertedByLibreOffice(bytes, ALL_SHEETS);
  return sheets.map((sheet) =>
    parseCsv(readFileSync(join(folder, `book-${sheet}.csv`), 'utf8')).map((row) => row.map(String)),
  );
}

/** A workbook opened and written anew by LibreOffice: what it did not understand is gone. */
export function rewrittenByLibreOffice(bytes: Uint8Array): Uint8Array {
  const folder = convertedByLibreOffice(bytes, 'xlsx:Calc MS Excel 2007 XML', 'out');
  return new Uint8Array(readFileSync(join(folder, 'out', 'book.xlsx')));
}

/** Converts a workbook in a folder of its own, which it answers. */
function convertedByLibreOffice(bytes: Uint8Array, to: string, into = '.'): string {
  const folder = mkdtempSync(join(tmpdir(), 'peer-'));
  const book = join(folder, 'book.xlsx');
  writeFileSync(book, bytes);
  const profile = `-env:UserInstallation=file://${folder}/profile`;
  const args = [profile, '--headless', '--convert-to', to, '--outdir', join(folder, into), book];
  execFileSync('soffice', args, { stdio: 'ignore' });
  return folder;
}

/** The parts of a workbook as text, by name. */
export function partsOf(bytes: Uint8Array): Map<string, string> {
  const parts = new Map<string, string>();
  rewritten(bytes, (name, xml) => {
    parts.set(name, xml);
    return xml;
  });
  return parts;
}

/**
 * The same workbook without the values that it keeps beside its formulas. LibreOffice shows kept values as they
 * are; only without them does it compute.
 */
export function withoutKeptValues(bytes: Uint8Array): Uint8Array {
  return rewritten(bytes, (name, xml) =>
    name.startsWith('xl/worksheets/sheet') ? xml.replace(/(<\/f>)<v>[^<]*<\/v>/g, '$1') : xml,
  );
}

/** A workbook with the text of its parts changed: the container is unpacked and packed again (ZIP, APPNOTE 4.3). */
function rewritten(bytes: Uint8Array, change: (name: string, xml: string) => string): Uint8Array {
  const old = Buffer.from(bytes);
  const files: Buffer[] = [];
  const entries: Buffer[] = [];
  let offset = 0;
  let at = old.readUInt32LE(old.lastIndexOf(Buffer.from('PK\x05\x06', 'latin1')) + 16);
  while (old.readUInt32LE(at) === 0x02014b50) {
    const nameLength = old.readUInt16LE(at + 28);
    const name = old.toString('utf8', at + 46, at + 46 + nameLength);
    const local = old.readUInt32LE(at + 42);
    const start = local + 30 + old.readUInt16LE(local + 26) + old.readUInt16LE(local + 28);
    const packed = old.subarray(start, start + old.readUInt32LE(at + 20));
    const plain = old.readUInt16LE(at + 10) === 8 ? inflateRawSync(packed) : packed;
    const changed = Buffer.from(change(name, plain.toString('utf8')));
    const { header, entry, data } = packedFile(name, changed, offset);
    files.push(header, data);
    entries.push(entry);
    offset += header.length + data.length;
    at += 46 + nameLength + old.readUInt16LE(at + 30) + old.readUInt16LE(at + 32);
  }
  return Buffer.concat([...files, ...entries, closing(entries, offset)]);
}

function packedFile(
  name: string,
  plain: Buffer,
  offset: number,
): { header: Buffer; entry: Buffer; data: Buffer } {
  const data = deflateRawSync(plain);
  const common = Buffer.alloc(26);
  common.writeUInt16LE(20, 0);
  common.writeUInt16LE(0x0800, 2);
  common.writeUInt16LE(8, 4);
  common.writeUInt32LE(crc32(plain), 10);
  common.writeUInt32LE(data.length, 14);
  common.writeUInt32LE(plain.length, 18);
  common.writeUInt16LE(Buffer.byteLength(name), 22);
  const entryEnd = Buffer.alloc(14);
  entryEnd.writeUInt32LE(offset, 10);
  return {
    header: Buffer.concat([Buffer.from('PK\x03\x04', 'latin1'), common, Buffer.from(name)]),
    entry: Buffer.concat([Buffer.from('PK\x01\x02\x14\x00', 'latin1'), common, entryEnd, Buffer.from(name)]),
    data,
  };
}

function closing(entries: readonly Buffer[], offset: number): Buffer {
  const end = Buffer.alloc(22);
  end.write('PK\x05\x06', 'latin1');
  end.writeUInt16LE(entries.length, 8);
  end.writeUInt16LE(entries.length, 10);
  end.writeUInt32LE(
    entries.reduce((sum, entry) => sum + entry.length, 0),
    12,
  );
  end.writeUInt32LE(offset, 16);
  return end;
}

function crc32(bytes: Buffer): number {
  let crc = ~0;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit += 1) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return ~crc >>> 0;
}
