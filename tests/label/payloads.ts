/** A label that was made up for these tests: what a scanner types, and what it says. */
export type GoodPayload = {
  readonly id: string;
  readonly what: string;
  readonly typed: string;
  readonly says: Readonly<Record<string, string | readonly [number, number, number]>>;
};

/** A damaged label, made up too: what a scanner types, and why it is refused. */
export type BadPayload = {
  readonly id: string;
  readonly what: string;
  readonly typed: string;
  readonly because: string;
  readonly words: string;
};

const message = (format: string, ...fields: readonly string[]): string =>
  `[)><RS>${[format, ...fields].join('<GS>')}<RS><EOT>`;

/** Twelve labels that are read. */
export const GOOD_PAYLOADS: readonly GoodPayload[] = [
  {
    id: 'v01',
    what: 'maker, part and serial as data identifiers',
    typed: message('06', '17V9ZZ98', '1PBX6T-100', 'S0001234'),
    says: { maker: '9ZZ98', part: 'BX6T-100', serial: '0001234', uii: 'D9ZZ98BX6T-1000001234' },
  },
  {
    id: 'v02',
    what: 'maker and serial in one field',
    typed: message('06', '18S9ZZ98A77-0042'),
    says: { maker: '9ZZ98', serial: 'A77-0042', uii: 'D9ZZ98A77-0042' },
  },
  {
    id: 'v03',
    what: 'a whole item id',
    typed: message('06', '25SD9ZZ98BX6T-1000001235'),
    says: { uii: 'D9ZZ98BX6T-1000001235' },
  },
  {
    id: 'v04',
    what: 'lot and date of manufacture besides',
    typed: message('06', '17V9ZZ98', '1PBX6T-100', '1T0324-117', '16D20240315', 'S0001236'),
    says: {
      ...{ lot: '0324-117', made: [2024, 3, 15], serial: '0001236', madeTo: 'day' },
      ...{ uii: 'D9ZZ98BX6T-1000001236' },
    },
  },
  {
    id: 'v05',
    what: 'stock number, month and lot, no serial',
    typed: message('06', 'N6140990000123', '7D0324', '1T117'),
    says: { stock: '6140-99-000-0123', made: [2024, 3, 1], madeTo: 'month', lot: '117' },
  },
  {
    id: 'v06',
    what: 'marked by an activity instead of the maker',
    typed: message('06', '7LW9ZZ9Z', '1PBX6T-100', 'S000777'),
    says: { 'activity address': 'W9ZZ9Z', serial: '000777', uii: 'LDW9ZZ9ZBX6T-100000777' },
  },
  {
    id: 'v07',
    what: 'text elements, serial of the maker',
    typed: message('12', 'MFR 9ZZ98', 'SER A77-0043'),
    says: { maker: '9ZZ98', serial: 'A77-0043', uii: 'D9ZZ98A77-0043' },
  },
  {
    id: 'v08',
    what: 'text elements, serial of the part',
    typed: message('12', 'MFR 9ZZ98', 'PNO BX6T-100', 'SEQ 0001237'),
    says: { maker: '9ZZ98', part: 'BX6T-100', serial: '0001237', uii: 'D9ZZ98BX6T-1000001237' },
  },
  {
    id: 'v09',
    what: 'GS1 elements in a message',
    typed: message('05', '0109521234500018', '1124031521ABC-9'),
    says: { 'trade item': '09521234500018', made: [2024, 3, 15], madeTo: 'day', serial: 'ABC-9' },
  },
  {
    id: 'v10',
    what: 'GS1 element string, day 00',
    typed: '01095212345001861124030010L117<GS>2100099',
    says: {
      ...{ 'trade item': '09521234500186', made: [2024, 3, 1], madeTo: 'month' },
      ...{ lot: 'L117', serial: '00099' },
    },
  },
  {
    id: 'v11',
    what: 'stock number as people read it',
    typed: 'NSN 6140-99-000-0123',
    says: { stock: '6140-99-000-0123', class: '6140', 'codification bureau': '99' },
  },
  {
    id: 'v12',
    what: 'date code of a label',
    typed: '0324-117',
    says: { made: [2024, 3, 1], madeTo: 'month', lot: '117' },
  },
];

/** Twelve labels that are refused. */
export const BAD_PAYLOADS: readonly BadPayload[] = [
  {
    id: 'x01',
    what: 'the end is missing',
    typed: '[)><RS>06<GS>17V9ZZ98<GS>1PBX6T-100<GS>S0001234',
    because: 'envelopeOpen',
    words: 'envelope is not closed',
  },
  {
    id: 'x02',
    what: 'the header has no RS',
    typed: '[)>06<GS>17V9ZZ98<GS>S1<RS><EOT>',
    because: 'envelopeHeader',
    words: 'header is damaged',
  },
  {
    id: 'x03',
    what: 'reserved format',
    typed: message('07', '17V9ZZ98', 'S1'),
    because: 'envelopeFormat',
    words: 'format 07 is not used here',
  },
  {
    id: 'x04',
    what: 'letter O in a maker code',
    typed: message('06', '17V9ZO98', '1PBX6T-100', 'S1'),
    because: 'makerCodeUs',
    words: 'may not hold I or O',
  },
  {
    id: 'x05',
    what: 'maker code of four characters',
    typed: message('06', '17V9ZZ8', '1PBX6T-100', 'S1'),
    because: 'makerCodeLength',
    words: 'must be 5',
  },
  {
    id: 'x06',
    what: 'serial without maker and part',
    typed: message('06', 'S0001234'),
    because: 'noUniqueId',
    words: 'no unique item id (UII) can be built',
  },
  {
    id: 'x07',
    what: 'character that no serial may have',
    typed: message('06', '17V9ZZ98', '1PBX6T-100', 'S00#12'),
    because: 'uniqueIdCharacters',
    words: 'only A-Z 0-9 - /',
  },
  {
    id: 'x08',
    what: '30 February',
    typed: message('06', '17V9ZZ98', '1PBX6T-100', 'S1', '16D20240230'),
    because: 'symbolDate',
    words: 'no such date',
  },
  {
    id: 'x09',
    what: 'check digit of a trade item',
    typed: '0109521234500019<GS>2100099',
    because: 'checkDigit',
    words: 'check digit should be 8',
  },
  {
    id: 'x10',
    what: 'date of manufacture alone',
    typed: '11240315',
    because: 'aiNeeds',
    words: 'AI 11 needs 01, 02, 03, 8006 or 8026',
  },
  {
    id: 'x11',
    what: 'stock number of twelve characters',
    typed: '6140-99-000-012',
    because: 'stockNumberLength',
    words: 'must be 13',
  },
  {
    id: 'x12',
    what: 'month 13',
    typed: '1324-117',
    because: 'codeMonth',
    words: 'month is 13',
  },
];

/** The same with real control characters, as a scanner in its raw mode sends it. */
export function raw(typed: string): string {
  return typed.replaceAll('<RS>', '\x1e').replaceAll('<GS>', '\x1d').replaceAll('<EOT>', '\x04');
}
