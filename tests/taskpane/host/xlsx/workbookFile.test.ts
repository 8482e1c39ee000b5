import { writeXlsx } from 'hucre/xlsx';
import { describe, expect, it } from 'vitest';
import { problemText } from '../../../../src/basics/problemText.ts';
import type { WorkbookFile } from '../../../../taskpane/host/xlsx/workbookFile.ts';
import { readWorkbookFile } from '../../../../taskpane/host/xlsx/workbookFile.ts';

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

async function read(bytes: Uint8Array, name: string): Promise<WorkbookFile> {
  const outcome = await readWorkbookFile(bytes, name);
  if (!outcome.ok) throw new Error(problemText(outcome.problem));
  return outcome.value;
}

async function csv(text: string | Uint8Array): Promise<unknown> {
  const file = await read(typeof text === 'string' ? utf8(text) : text, 'store.csv');
  return file.sheets[0]!.rows;
}

async function refusal(bytes: Uint8Array, name: string): Promise<string> {
  const outcome = await readWorkbookFile(bytes, name);
  return outcome.ok ? 'was read' : problemText(outcome.problem);
}

describe('a .csv file', () => {
  it('takes as a number only what is written exactly as a number', async () => {
    const row = '12.6,0324,1E234,+5,-3,007,12.60,0.5,.5,NaN,Infinity,1e21,2026-03-15,TRUE';
    expect(await csv(row)).toEqual([
      [
        12.6,
        '0324',
        '1E234',
        '+5',
        -3,
        '007',
        '12.60',
        0.5,
        '.5',
        'NaN',
        'Infinity',
        '1e21',
        '2026-03-15',
        'TRUE',
      ],
    ]);
  });

  it('finds the separator in the header line', async () => {
    expect(await csv('a;b\n1;2')).toEqual([
      ['a', 'b'],
      [1, 2],
    ]);
    expect(await csv('a\tb\n1\t2')).toEqual([
      ['a', 'b'],
      [1, 2],
    ]);
    expect(await csv('"Volts, rested",b\n1,2')).toEqual([
      ['Volts, rested', 'b'],
      [1, 2],
    ]);
    expect(await csv('Volts, rested;b\n1;2')).toEqual([
      ['Volts, rested', 'b'],
      [1, 2],
    ]);
    expect(await csv('Store north\ncode;volts\n0324;12')).toEqual([
      ['Store north'],
      ['code', 'volts'],
      ['0324', 12],
    ]);
    expect(await csv('code\n0324-117\n')).toEqual([['code'], ['0324-117']]);
  });

  it('reads a decimal comma only where a semicolon separates', async () => {
    expect(await csv('a;b\n12,6;1.234,5')).toEqual([
      ['a', 'b'],
      [12.6, '1.234,5'],
    ]);
    expect(await csv('a,b\n"12,6",1')).toEqual([
      ['a', 'b'],
      ['12,6', 1],
    ]);
  });

  it('keeps quotes, separators and line ends inside quotes, and empty rows between filled ones', async () => {
    expect(await csv('a,b\r\n"x ""y"", z","two\r\nlines"\r\n\r\n,1\r\n\r\n')).toEqual([
      ['a', 'b'],
      ['x "y", z', 'two\r\nlines'],
      [null],
      [null, 1],
    ]);
  });

  it('takes a quote that is never closed as text', async () => {
    expect(await csv('a,b\n"x,1')).toEqual([
      ['a', 'b'],
      ['"x', 1],
    ]);
  });

  it('reads UTF-8 with and without its mark, UTF-16 with its mark, else windows-1252', async () => {
    const name = [['Tromsø']];
    expect(await csv('Tromsø')).toEqual(name);
    expect(await csv('\uFEFFTromsø')).toEqual(name);
    expect(await csv(Uint8Array.from([0x54, 0x72, 0x6f, 0x6d, 0x73, 0xf8]))).toEqual(name);
    expect(await csv(new Uint8Array(Buffer.from('\uFEFFTromsø', 'utf16le')))).toEqual(name);
  });

  it('names its sheet after the file', async () => {
    const file = await read(utf8('a'), '/somewhere/store [north].csv');
    expect(file.sheets[0]!.name).toBe('store  north');
    expect((await read(utf8('a'), '.csv')).sheets[0]).toMatchObject({ name: 'Sheet', rows: [['a']] });
  });

  it('reads 20,000 rows', async () => {
    const line = '0324-117,12.6,"Store, north",2026-03-15\n';
    expect(await csv('code,volts,store,tested\n' + line.repeat(20_000))).toHaveLength(20_001);
  });
});

const date = (text: string): Date => new Date(`${text}Z`);

/** One workbook with everything that a reader should be told about. */
const fleet = (dateSystem: '1900' | '1904'): Promise<Uint8Array> =>
  writeXlsx({
    dateSystem,
    namedRanges: [{ name: 'CrankAsOf', range: 'Fleet!$B$2' }],
    sheets: [
      {
        name: 'Fleet',
        columns: [{}, { numFmt: 'yyyy-mm-dd' }, { hidden: true }],
        rows: [
          ['code', 'tested', 'volts'],
          ['0324-117', date('2026-03-15T00:00'), 12.6],
          ['#N/A', date('2026-03-15T06:00'), null],
          [324, null, true],
        ],
        cells: new Map([
          ['2,0', { richText: [{ text: '#N/A' }] }],
          ['2,2', { type: 'error' as const, value: '#DIV/0!' }],
          ['3,1', { type: 'formula' as const, value: null, formula: 'B2+1' }],
        ]),
        rowDefs: new Map([[2, { hidden: true }]]),
        autoFilter: { range: 'A1:C4' },
        merges: [{ startRow: 4, startCol: 0, endRow: 4, endCol: 2 }],
        tables: [
          {
            name: 'Units',
            range: 'A1:C4',
            columns: [{ name: 'code' }, { name: 'tested' }, { name: 'volts' }],
          },
        ],
      },
      { name: 'Notes', rows: [['a note']], hidden: true },
    ],
  });

describe('an .xlsx file', () => {
  it('gives dates as serials and tells which cells are dates', async () => {
    const [sheet] = (await read(await fleet('1900'), 'fleet.xlsx')).sheets;
    expect(sheet!.rows.map((row) => row[1])).toEqual(['tested', 46096, 46096.25, null]);
    expect(sheet!.dateCells).toEqual(new Map([[1, new Set([1, 2])]]));
  });

  it('tells error cells from texts that look like them', async () => {
    const [sheet] = (await read(await fleet('1900'), 'fleet.xlsx')).sheets;
    expect(sheet!.rows[2]).toEqual(['#N/A', 46096.25, { error: '#DIV/0!', message: '' }]);
    expect(sheet!.rows[3]).toEqual([324, null, true]);
  });

  it('knows hidden sheets, rows and columns, filters, merged blocks, tables and names', async () => {
    const file = await read(await fleet('1900'), 'fleet.xlsx');
    const [sheet, notes] = file.sheets;
    expect([sheet!.hidden, notes!.hidden]).toEqual([false, true]);
    expect([...sheet!.hiddenRows, ...sheet!.hiddenColumns, sheet!.filtered]).toEqual([2, 2, true]);
    expect(sheet!.merges).toEqual([{ startRow: 4, startColumn: 0, endRow: 4, endColumn: 2 }]);
    expect(sheet!.tables).toEqual([
      {
        name: 'Units',
        range: { startRow: 0, startColumn: 0, endRow: 3, endColumn: 2 },
        heads: ['code', 'tested', 'volts'],
        totalRow: false,
      },
    ]);
    expect(file.names).toEqual([{ name: 'CrankAsOf', refersTo: 'Fleet!$B$2' }]);
  });

  it('says that a formula was saved without its value', async () => {
    const { warnings } = await read(await fleet('1900'), 'fleet.xlsx');
    expect(warnings).toEqual([
      expect.stringContaining('sheet Fleet: 1 formula has no saved value, so its cell was read as empty'),
    ]);
  });

  it('converts the dates of a 1904 workbook and says so', async () => {
    const file = await read(await fleet('1904'), 'fleet.xlsx');
    expect(file.sheets[0]!.rows.map((row) => row[1])).toEqual(['tested', 46096, 46096.25, null]);
    expect(file.warnings[0]).toMatch(/counts its dates from 1904.*converted to the 1900 system/);
  });

  it.each(['1900', '1904'] as const)(
    'keeps a time of day and early serials as they are (%s)',
    async (dateSystem) => {
      const times = await writeXlsx({
        dateSystem,
        sheets: [
          {
            name: 'Times',
            rows: [[0.25], [30], [61]],
            cells: new Map([0, 1, 2].map((row) => [`${row},0`, { style: { numFmt: 'yyyy-mm-dd hh:mm' } }])),
          },
        ],
      });
      const { rows } = (await read(times, 'times.xlsx')).sheets[0]!;
      expect(rows.flat()).toEqual(dateSystem === '1900' ? [0.25, 30, 61] : [0.25, 1492, 1523]);
    },
  );

  it('reads a workbook with macros as data and says that they are not run', async () => {
    const { warnings } = await read(await fleet('1900'), 'fleet.xlsm');
    expect(warnings[0]).toBe('fleet.xlsm holds macros: they are not run and not kept');
  });
});

describe('files that are refused', () => {
  const compound = Uint8Array.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]);
  const cases: [string, Uint8Array, RegExp][] = [
    ['fleet.xls', compound, /fleet\.xls is a kind of file that is not read here; .*save it as \.xlsx/],
    ['fleet.xlsb', utf8('PK'), /save it as \.xlsx/],
    ['fleet.ods', utf8('PK'), /save it as \.xlsx/],
    ['fleet.pdf', utf8('%PDF'), /fleet\.pdf is not read here; allowed are \.xlsx and \.csv/],
    ['fleet', utf8('a,b'), /allowed are \.xlsx and \.csv/],
    ['zero.csv', utf8(''), /the file zero\.csv is empty/],
    ['blank.csv', utf8(' \r\n ; ,\n'), /the file blank\.csv is empty/],
    ['zero.xlsx', utf8(''), /the file zero\.xlsx is empty/],
    ['fleet.xlsx', compound, /encrypted with a password/],
    ['fleet.xlsx', utf8('a,b'), /can't be read as a workbook/],
    ['fleet.xlsx', Uint8Array.from([0x50, 0x4b, 3, 4, 9, 9]), /can't be read as a workbook/],
    ['fleet.csv', Uint8Array.from([0x50, 0x4b, 3, 4, 9, 9]), /is a workbook under the name of a \.csv/],
  ];
  it.each(cases)('%s', async (name, bytes, sentence) => {
    expect(await refusal(bytes, name)).toMatch(sentence);
  });

  it('an encrypted workbook', async () => {
    const bytes = await writeXlsx({
      sheets: [{ name: 'A', rows: [[1]] }],
      encryption: { password: 'x', spinCount: 1 },
    });
    expect(await refusal(bytes, 'fleet.xlsx')).toMatch(/encrypted with a password/);
  });
});
