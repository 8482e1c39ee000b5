import type { CellStyle } from 'hucre/xlsx';
import type { DateShown, Format, Meaning } from '../../src/report/sheet.ts';

/** How a spreadsheet shows a number of each format; codes are the file format's own (ISO/IEC 29500). */
export const NUMBER_CODES: Record<Format, string | undefined> = {
  text: '@',
  whole: '#,##0',
  oneDecimal: '#,##0.0',
  months: '0.0',
  share: '0%',
  thousandths: '0.000',
  volts: '0.00',
  chance: '0.0%',
  money: '#,##0.00',
  date: 'yyyy-mm-dd',
  plain: undefined,
};

/** Codes of dates; a spreadsheet may show its own separator in place of the stroke. */
const DATE_CODES: Record<DateShown, string> = {
  yearFirst: 'yyyy-mm-dd',
  dayFirst: 'dd/mm/yyyy',
  monthFirst: 'mm/dd/yyyy',
};

/** The code of a number's format on a sheet that shows its dates in a certain order. */
export function numberCode(format: Format, dates: DateShown = 'yearFirst'): string | undefined {
  return format === 'date' ? DATE_CODES[dates] : NUMBER_CODES[format];
}

const INK = { rgb: '1F2A33' };
const GREY = { rgb: '5B6670' };
const HAIR = { style: 'thin', color: { rgb: 'B8BFC6' } } as const;
const THIN_RULE = { style: 'thin', color: INK } as const;
const RULE = { style: 'medium', color: INK } as const;
// A face that every system has, or one of the same widths.
const font = (size: number, more: object = {}) => ({ name: 'Arial', size, color: INK, ...more });
const fill = (rgb: string) => ({ type: 'pattern', pattern: 'solid', fgColor: { rgb } }) as const;

/** The one look of every sheet that the tool writes: readable in black and white, inputs boxed. */
export const LOOKS: Record<Meaning, CellStyle> = {
  title: { font: font(18, { bold: true }) },
  subtitle: { font: font(12, { color: GREY }) },
  heading: { font: font(13, { bold: true }), border: { bottom: RULE } },
  columnHead: {
    font: font(10, { bold: true }),
    fill: fill('E9ECEF'),
    border: { bottom: RULE, top: HAIR, left: HAIR, right: HAIR },
    alignment: { wrapText: true, vertical: 'bottom' },
  },
  label: { font: font(10), alignment: { vertical: 'center' } },
  body: { font: font(10), border: { bottom: HAIR }, alignment: { vertical: 'center' } },
  wrapped: { font: font(10), border: { bottom: HAIR }, alignment: { wrapText: true, vertical: 'center' } },
  input: {
    font: font(10, { bold: true }),
    border: { top: RULE, bottom: RULE, left: RULE, right: RULE },
    alignment: { vertical: 'center' },
  },
  total: {
    font: font(10, { bold: true }),
    border: { top: THIN_RULE, bottom: THIN_RULE },
    alignment: { vertical: 'center' },
  },
  note: { font: font(9, { italic: true, color: GREY }), alignment: { vertical: 'center' } },
  caution: { font: font(10, { bold: true }), alignment: { vertical: 'center' } },
};
