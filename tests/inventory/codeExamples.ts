import type { Examples } from './examples.ts';
import { day, fleet, plain } from './sheets.ts';

const codes = (list: readonly (string | number)[], maker = '9ZZ98') =>
  list.map((code, index) => plain({ 'Date code': code, Maker: maker }, index));

/** Findings about codes, identifiers and columns: rows in which the kind is found, and like rows in which it is not. */
export const codeExamples: Examples = {
  'unreadable code': {
    yes: [[...fleet(), plain({ 'Date code': '??bad' })]],
    no: [[...fleet(), plain({ 'Date code': '0124-3' })]],
  },
  'code later than as-of': {
    yes: [[...fleet(), plain({ 'Date code': '1226-117' })]],
    no: [[...fleet(), plain({ 'Date code': '0626-117', Installed: day('2026-06-20') })]],
  },
  'code reads two ways': {
    yes: [codes(['J4-1', 'K4-2', 'L3-1', 'A5-9', 'J5-2', 'K3-4', 'L4-1', 'B5-9'])],
    no: [codes(['C4-1', 'D4-2', 'E3-1', 'A5-9'])],
  },
  'codes in another layout': {
    yes: [
      codes([
        '2403-1',
        '2311-2',
        '2210-3',
        '2504-4',
        '2508-9',
        '2401-1',
        '2309-1',
        '2212-1',
        '2112-3',
        '2310-7',
        '2309-2',
      ]),
    ],
    no: [codes(['0324-1', '1123-2', '1022-3'])],
  },
  'leading zero eaten': {
    yes: [
      [...fleet(), plain({ 'Date code': 324 })],
      ['000770', '000771', '000772', '000773', 774].map((Serial) => plain({ Serial })),
    ],
    no: [
      [...fleet(), plain({ 'Date code': 1023 })],
      ['100770', '100771', '9'].map((Serial) => plain({ Serial })),
    ],
  },
  'long number in scientific form': {
    yes: [
      [...fleet(), plain({ NSN: '6.14E+12' })],
      [...fleet(), plain({ Serial: 1.234567e17 })],
      [...fleet(), plain({ Maker: '1.00E+234' })],
    ],
    no: [fleet()],
  },
  'stock number stored as a number': {
    yes: [[...fleet(), plain({ NSN: 6140990000123 })]],
    no: [[...fleet(), plain({ NSN: '6140990000123' })]],
  },
  'dash turned to a long dash': {
    yes: [[...fleet(), plain({ 'Date code': '1023–117' })]],
    no: [[...fleet(), plain({ 'Date code': '1023-117' })]],
  },
  'code turned to a date': {
    yes: [
      {
        rows: [...fleet(), plain({ 'Date code': day('2024-03-01') })],
        isDateCell: (row, column) => row === 7 && column === 4,
      },
      [...fleet(), plain({ 'Date code': 'Mar-24' })],
    ],
    no: [[...fleet(), plain({ 'Date code': '0324' })]],
  },
  'stock number malformed': {
    yes: [[...fleet(), plain({ NSN: '6140-99-00-0123' })]],
    no: [[...fleet(), plain({ NSN: '6140 99 000 0123' })]],
  },
  'maker code malformed': {
    yes: [[...fleet(), plain({ Maker: '9ZI98' })]],
    no: [
      [...fleet(), plain({ Maker: '8YY97' })],
      ['Norr Works', 'Fell Works', 'Tarn'].map((Maker) => plain({ Maker })),
    ],
  },
  'two columns fit one field': {
    yes: [fleet().map((row) => ({ ...row, 'Date fitted': day('2024-02-11') }))],
    no: [fleet().map((row) => ({ ...row, 'Date of sale': day('2024-02-11') }))],
  },
  'column guessed by its cells': {
    yes: [fleet().map((row, index) => ({ ...row, 'Item 4': 12.41 + index / 10 }))],
    no: [fleet().map((row, index) => ({ ...row, 'Item 4': 42 + index }))],
  },
  'hidden rows counted': {
    yes: [{ rows: fleet(), hiddenRows: new Set([3]) }],
    no: [{ rows: fleet(), hiddenRows: new Set([900]) }],
  },
  'workbook counts from 1904': {
    yes: [{ rows: fleet(), from1904: true, isDateCell: () => true }],
    no: [{ rows: fleet(), from1904: false }],
  },
};
