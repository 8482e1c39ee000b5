import { dayFromParts, dayParts, isoDay } from '../../src/basics/calendar.ts';
import { gs1CheckDigit } from '../../src/label/elementString.ts';
import { labelScan } from '../../src/label/labelScan.ts';
import { lotNumber } from '../../src/label/lotNumber.ts';
import { isUsMakerCode } from '../../src/label/makerCode.ts';
import { manufactureDate } from '../../src/label/manufactureDate.ts';
import { BAD_PAYLOADS, GOOD_PAYLOADS } from '../label/payloads.ts';
import type { PublishedCheck } from './check.ts';
import { valueOf } from './check.ts';

const AS_OF = dayFromParts(2026, 3, 15)!;
const made = (code: string, layout?: string): string => isoDay(valueOf(manufactureDate(code, AS_OF, layout)));
const monthMade = (code: string, layout?: string): string => made(code, layout).slice(0, 7);

/** Codes, stock numbers and symbols beside what others print. */
export const labelChecks: readonly PublishedCheck[] = [
  {
    id: 'I1',
    quantity: 'month made and lot',
    source: 'commonPractice',
    where: 'month, year and lot on a label',
    given: '0324-117 as MMyy-lot',
    expected: '2024-03 lot 117',
    ours: () => `${monthMade('0324-117')} lot ${valueOf(lotNumber('0324-117'))}`,
  },
  {
    id: 'I2',
    quantity: 'month made in two layouts',
    source: 'commonPractice',
    where: 'month before year, and year before month',
    given: '0312 as MMyy and as yyMM',
    expected: '2012-03, 2003-12',
    ours: () => `${monthMade('0312', 'MMyy')}, ${monthMade('0312', 'yyMM')}`,
  },
  {
    id: 'I3',
    quantity: 'day made',
    source: 'mh10-8-2',
    where: 'shape of data identifier 4D, and the calendar',
    given: '24060 as yyooo',
    expected: '2024-02-29',
    ours: () => made('24060', 'yyooo'),
  },
  {
    id: 'I4',
    quantity: 'Monday of the week made',
    source: 'mh10-8-2',
    where: 'shape of data identifier 10D, and the calendar',
    given: '2410 as kkWW',
    expected: '2024-03-04',
    ours: () => made('2410', 'kkWW'),
  },
  {
    id: 'I5',
    quantity: 'month and last digit of the year made',
    source: 'monthLetterPages',
    where: 'list A to M without I',
    given: 'J9 as Ay',
    expected: 'month 9, year ending in 9',
    ours: () => {
      const { month, year } = dayParts(valueOf(manufactureDate('J9', AS_OF, 'Ay')));
      return `month ${month}, year ending in ${year % 10}`;
    },
  },
  {
    id: 'I6',
    quantity: 'check digit of a trade item',
    source: 'gs1SyntaxDictionary',
    where: 'rule of the check digit',
    given: '0952123450001',
    expected: 8,
    digits: 0,
    ours: () => gs1CheckDigit('0952123450001'),
  },
  {
    id: 'I7',
    quantity: 'which codes have the shape of a US maker code',
    source: 'dodd4100-39',
    where: 'volume 7',
    given: '2AAA5, 27340, 1I234, AA123',
    expected: 'yes, yes, no, no',
    ours: () =>
      ['2AAA5', '27340', '1I234', 'AA123'].map((code) => (isUsMakerCode(code) ? 'yes' : 'no')).join(', '),
  },
  {
    id: 'I8',
    quantity: 'labels read, and labels refused for the reason they were made for',
    source: 'iso15434',
    where: 'own made-up labels in the formats of the standards',
    given: '12 good ones and 12 damaged ones',
    expected: '12 read, 12 refused',
    ours: () => {
      const read = GOOD_PAYLOADS.filter(({ typed }) => labelScan(typed).ok).length;
      const refused = BAD_PAYLOADS.filter(({ typed, because }) => {
        const outcome = labelScan(typed);
        return !outcome.ok && outcome.problem.because === because;
      }).length;
      return `${read} read, ${refused} refused`;
    },
  },
];
