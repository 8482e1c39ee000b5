type Separator = ',' | ';' | '\t';

// Where two occur equally often the rarer one inside a heading wins: "Rest voltage, V" is a usual heading.
const SEPARATORS: readonly Separator[] = ['\t', ';', ','];

/** The text of a file: by its byte-order mark, else UTF-8 where it is valid UTF-8, else windows-1252. */
export function decodedText(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

/** The cells of a delimited text, row by row; an empty field is null, rows after the last filled one are left out. */
export function csvRows(text: string): (string | number | null)[][] {
  const separator = separatorOf(text);
  const rows = fields(text, separator).map((row) => row.map((field) => csvCell(field, separator)));
  while (rows.length > 0 && rows.at(-1)!.every((cell) => cell === null)) rows.pop();
  return rows;
}

/**
 * A field is a number only where a number is written exactly so: 0324, 1E234, +5 and 12.60 may be codes
 * and stay text. Where `;` separates, a decimal comma is read as well.
 */
function csvCell(field: string, separator: Separator): string | number | null {
  if (field === '') return null;
  const plain = separator === ';' && /^-?\d+,\d+$/.test(field) ? field.replace(',', '.') : field;
  const number = Number(plain);
  return Number.isFinite(number) && String(number) === plain ? number : field;
}

/** The separator that stands most often in the header line: the first line that has one at all. */
function separatorOf(text: string): Separator {
  for (const line of text.split(/\r\n|\n|\r/, 50)) {
    const unquoted = line.replace(/"(?:[^"]|"")*"/g, '');
    const counts = SEPARATORS.map((separator) => unquoted.split(separator).length - 1);
    const most = Math.max(...counts);
    if (most > 0) return SEPARATORS[counts.indexOf(most)]!;
  }
  return ',';
}

/** The fields of each record; quotes may hold separators, line ends and doubled quotes. */
function fields(text: string, separator: Separator): string[][] {
  const bare = `[^${separator}\r\n]*`;
  const pattern = new RegExp(`(?:"([^"]*(?:""[^"]*)*)"(${bare})|(${bare}))(${separator}|\r\n|\n|\r|$)`, 'y');
  const rows: string[][] = [];
  let row: string[] = [];
  while (pattern.lastIndex < text.length || row.length > 0) {
    const [, quoted, afterQuote, plain, end] = pattern.exec(text)!;
    row.push(quoted === undefined ? plain! : quoted.replaceAll('""', '"') + afterQuote);
    if (end === separator) continue;
    rows.push(row);
    row = [];
  }
  return rows;
}
