import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LabelScan } from '../../src/label/labelScan.ts';
import { labelField, labelRows, labelScan } from '../../src/label/labelScan.ts';
import { BAD_PAYLOADS, GOOD_PAYLOADS, raw } from './payloads.ts';
import { on, refusal, sentence, valueOf } from './sayings.ts';

/** What a label says under a name, wherever it stands. */
const said = (scan: LabelScan, name: string): unknown =>
  ({
    ...Object.fromEntries(scan.others),
    ...Object.fromEntries(Object.entries(scan).filter(([, value]) => value !== undefined)),
  })[name];

const inAllSpellings = (typed: string): readonly string[] => [
  typed,
  raw(typed),
  typed
    .replaceAll('<', '{')
    .replaceAll('[)}', '[)>')
    .replace(/(RS|GS|EOT)>/g, '$1}'),
  typed.replace(/<(RS|GS|EOT)>/g, (name) => name.toLowerCase()),
  `  ${typed}\r\n`,
];

describe('labelScan, the twelve good labels', () => {
  it.each(GOOD_PAYLOADS)('$id $what', ({ typed, says }) => {
    for (const text of inAllSpellings(typed)) {
      const scan = valueOf(labelScan(text));
      for (const [name, value] of Object.entries(says)) {
        expect(said(scan, name), name).toBe(
          typeof value === 'string' ? value : on(...(value as [number, number, number])),
        );
      }
    }
  });

  it('adds no item id where the label has no serial of that kind', () => {
    const without = GOOD_PAYLOADS.filter(({ says }) => says.uii === undefined);
    expect(without.map(({ id }) => id)).toEqual(['v05', 'v09', 'v10', 'v11', 'v12']);
    for (const { typed } of without) expect(valueOf(labelScan(typed)).uii).toBeUndefined();
  });
});

describe('labelScan, the twelve bad labels', () => {
  it.each(BAD_PAYLOADS)('$id $what', ({ typed, because, words }) => {
    for (const text of inAllSpellings(typed)) {
      expect(refusal(labelScan(text))).toBe(because);
      expect(sentence(labelScan(text))).toContain(words);
    }
  });
});

describe('labelScan, item ids', () => {
  const uii = (...fields: readonly string[]): string | undefined =>
    valueOf(labelScan(`[)>{RS}06{GS}${fields.join('{GS}')}{RS}{EOT}`)).uii;

  it('by hand', () => {
    expect(uii('12V123456789', '1PBX6T-100', 'S7')).toBe('UN123456789BX6T-1007');
    expect(uii('18VD9ZZ98', '1PBX6T-100', 'S7')).toBe('D9ZZ98BX6T-1007');
    // A lot stands for the part only where there is none.
    expect(uii('17V9ZZ98', '1T0324', 'S7')).toBe('D9ZZ9803247');
    expect(uii('17V9ZZ98', '1T0324', '1PBX6T-100', 'S7')).toBe('D9ZZ98BX6T-1007');
    expect(uii('17V9ZZ98', '1PBX6T-100')).toBeUndefined();
  });

  it('does not mind a character in a field that is no part of it', () => {
    expect(uii('17V9ZZ98', '1TL.7', '1PBX6T-100', 'S7')).toBe('D9ZZ98BX6T-1007');
  });

  it('refuses one that is longer than 50', () => {
    const part = `1P${'B'.repeat(42)}`;
    const typed = (serial: string): string => `[)>{RS}06{GS}17V9ZZ98{GS}${part}{GS}S${serial}{RS}{EOT}`;
    expect(valueOf(labelScan(typed('77'))).uii).toHaveLength(50);
    expect(refusal(labelScan(typed('777')))).toBe('uniqueIdLength');
  });

  it('is the agency, the maker, the part and the serial for any of them', () => {
    const word = fc.stringMatching(/^[0-9A-Z/-]{1,15}$/);
    fc.assert(
      fc.property(word, word, (part, serial) => {
        expect(uii('17V9ZZ98', `1P${part}`, `S${serial}`)).toBe(`D9ZZ98${part}${serial}`);
      }),
      { seed: 41, numRuns: 200 },
    );
  });
});

describe('labelScan, fields of a message', () => {
  const scan = (...fields: readonly string[]) => labelScan(`[)>{RS}06{GS}${fields.join('{GS}')}{RS}{EOT}`);

  it('shows what it knows no name for, and drops nothing', () => {
    const read = valueOf(scan('N6140990000123AB', 'Q4', '5PXYZ', '14D20270101', '20D15032024'));
    expect(read.others).toEqual([
      ['class', '6140'],
      ['codification bureau', '99'],
      ['behind the stock number', 'AB'],
      ['quantity', '4'],
      ['data identifier 5P', 'XYZ'],
      ['expires', on(2027, 1, 1)],
      ['inspected', on(2024, 3, 15)],
    ]);
  });

  it('takes a date of manufacture before any other date, and none of two others', () => {
    expect(valueOf(scan('12D20240101', '16D20240315')).made).toBe(on(2024, 3, 15));
    expect(valueOf(scan('12D20240101', '7D0224')).made).toBeUndefined();
    expect(valueOf(scan('12D20240101', '7D0224')).others).toEqual([
      ['date', on(2024, 1, 1)],
      ['date', on(2024, 2, 1)],
    ]);
    expect(valueOf(scan('12D20240201', '7D0224')).made).toBe(on(2024, 2, 1));
  });

  it.each([
    ['D240315', on(2024, 3, 15), 'day'],
    ['1D150324', on(2024, 3, 15), 'day'],
    ['2D031524', on(2024, 3, 15), 'day'],
    ['4D24060', on(2024, 2, 29), 'day'],
    ['7D0324', on(2024, 3, 1), 'month'],
    ['10D2410', on(2024, 3, 4), 'week'],
    ['11D202410', on(2024, 3, 4), 'week'],
    ['12D20240315', on(2024, 3, 15), 'day'],
    ['16D20240315', on(2024, 3, 15), 'day'],
    ['17D15032024', on(2024, 3, 15), 'day'],
    ['7D0370', on(1970, 3, 1), 'month'],
    ['7D0369', on(2069, 3, 1), 'month'],
    ['7D0399', on(1999, 3, 1), 'month'],
  ])('dates by hand: %s', (field, day, span) => {
    expect(valueOf(scan(field))).toMatchObject({ made: day, madeTo: span });
  });

  it.each([
    [['4D23366'], 'symbolDate'],
    [['10D2453'], 'symbolDate'],
    [['7D1324'], 'codeMonth'],
    [['16D2024031'], 'symbolDate'],
    [['16D19690101'], 'symbolDate'],
    [['17V9ZZ98', '17V9ZZ97'], 'fieldTwice'],
    [['18S9ZZ9'], 'fieldShape'],
    [['18SIZZ9B77'], 'makerCodeEnds'],
    [['12V12345', '1PX', 'S1'], 'fieldShape'],
    [['N61409900001'], 'fieldShape'],
    [['N6140990A00123'], 'stockNumberShape'],
    [['17V9ZZ98', 'S1'], 'noUniqueId'],
    [['1PX', 'S1'], 'noUniqueId'],
    [['17V9zz98', '1PX', 'S1'], 'uniqueIdCharacters'],
    [['17V9ZZ98', ''], 'fieldUnknown'],
    [['#'], 'fieldUnknown'],
  ])('refuses %j', (fields, because) => {
    expect(refusal(scan(...fields))).toBe(because);
  });

  it('tells what a serial lacks', () => {
    expect(sentence(scan('17V9ZZ98', 'S1'))).toContain('without a part or lot');
    expect(sentence(scan('1PX', 'S1'))).toContain('without a maker');
  });

  it('reads two formats of one message', () => {
    const typed = '[)><RS>06<GS>17V9ZZ98<GS>1PX<GS>S7<RS>05<GS>0109521234500018<RS><EOT>';
    expect(valueOf(labelScan(typed))).toMatchObject({
      uii: 'D9ZZ98X7',
      readAs: 'ISO/IEC 15434 format 06 and 05',
    });
  });

  it('says of a message without header or GS that it is damaged', () => {
    expect(refusal(labelScan('[)>0617V9ZZ981PBX6T-100S0001234'))).toBe('envelopeHeader');
    expect(refusal(labelScan('S1<GS>17V9ZZ98'))).toBe('envelopeHeader');
    expect(refusal(labelScan('[)><RS>0617V9ZZ98<RS><EOT>'))).toBe('envelopeHeader');
  });
});

describe('labelScan, text without an envelope', () => {
  it('takes what is nothing else for a serial, with its zeros and its case', () => {
    for (const text of ['000777', 'A77-0042', 'ab.12/9', '4711', '11240399', '1234']) {
      expect(valueOf(labelScan(text))).toEqual({ readAs: 'bare serial', serial: text, others: [] });
    }
    expect(valueOf(labelScan(777)).serial).toBe('777');
  });

  it('knows a stock number and a date code in other ways of writing', () => {
    for (const text of ['6140990000123', '6140 99 000 0123', '6140\u201399\u2013000\u20130123']) {
      expect(valueOf(labelScan(text)).stock, text).toBe('6140-99-000-0123');
    }
    for (const text of ['0324\u2013117', '0324/117', '0324 117']) {
      expect(valueOf(labelScan(text)), text).toMatchObject({ made: on(2024, 3, 1), lot: '117' });
    }
  });

  it('takes off what a reader puts before the text', () => {
    expect(valueOf(labelScan(']d20109521234500018')).readAs).toBe('GS1 element string');
    expect(valueOf(labelScan(']C1<FNC1>0109521234500018')).readAs).toBe('GS1 element string');
    expect(valueOf(labelScan(`]d1${GOOD_PAYLOADS[0]!.typed}`)).serial).toBe('0001234');
  });

  it('takes off what a scanner is set to send around the text, and tells it', () => {
    const framed = valueOf(labelScan(`\u0002]d1${GOOD_PAYLOADS[0]!.typed}\u0003\r\n`));
    expect(framed).toMatchObject({ serial: '0001234', takenOff: '<STX>]d1 <ETX>' });
    expect(labelRows(framed).at(-1)).toEqual(['taken off', '<STX>]d1 <ETX>']);
    expect(valueOf(labelScan('{STX}NF2001{ETX}'))).toMatchObject({
      serial: 'NF2001',
      takenOff: '<STX> <ETX>',
    });
    expect(valueOf(labelScan('NF2001\u001d'))).toMatchObject({ serial: 'NF2001', takenOff: '<GS>' });
    expect(valueOf(labelScan('NF2001')).takenOff).toBeUndefined();
  });

  it('does not guess that a GS1 mark or a separator means nothing', () => {
    expect(refusal(labelScan(']C1NF2001'))).toBe('markWithoutFields');
    expect(sentence(labelScan(']Q3NF2001'))).toContain(']Q3 says that it is a GS1 symbol');
    expect(refusal(labelScan(']d2'))).toBe('markWithoutFields');
    expect(refusal(labelScan('21NF2001\u001d'))).toBe('separatorBehind');
    expect(sentence(labelScan('0079904\u001d'))).toContain("switch off the scanner's suffix");
    expect(sentence(labelScan('NF\u00002001'))).toContain('"NF<NUL>2001", with control characters');
  });

  it('refuses what it can make nothing of', () => {
    for (const text of ['S/N: 0001234', 'x'.repeat(51), '', '=1+1', 1.5, 1e20, -3, true, null]) {
      expect(refusal(labelScan(text)), String(text)).toBe('notASymbol');
    }
  });
});

describe('labelField and labelRows', () => {
  it('give one field, or empty text where the label lacks it', () => {
    const { typed } = GOOD_PAYLOADS[3]!;
    expect(valueOf(labelField(typed, 'lot'))).toBe('0324-117');
    expect(valueOf(labelField(typed, 'made'))).toBe(on(2024, 3, 15));
    expect(valueOf(labelField(typed, 'stock'))).toBe('');
    expect(refusal(labelField(BAD_PAYLOADS[0]!.typed, 'lot'))).toBe('envelopeOpen');
  });

  it('give everything as rows, the named fields first', () => {
    expect(labelRows(valueOf(labelScan(GOOD_PAYLOADS[4]!.typed)))).toEqual([
      ['lot', '117'],
      ['made', on(2024, 3, 1)],
      ['stock', '6140-99-000-0123'],
      ['made names a', 'month'],
      ['class', '6140'],
      ['codification bureau', '99'],
      ['read as', 'ISO/IEC 15434 format 06'],
    ]);
  });
});
