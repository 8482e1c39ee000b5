import { celsiusFromFahrenheit } from '../../src/basics/units.ts';
import { conditionCode } from '../../src/cranking/conditionCode.ts';
import { convertRating } from '../../src/cranking/convertRating.ts';
import { crankingAmps } from '../../src/cranking/crankingAmps.ts';
import { loadTestFloor } from '../../src/cranking/loadTestFloor.ts';
import { specifiedAmps } from '../../src/cranking/specifiedAmps.ts';
import { judge, verdict } from '../../src/cranking/verdict.ts';
import { restVoltage } from '../../src/electrochemistry/restVoltage.ts';
import type { NotOurs, PublishedCheck } from './check.ts';
import { valueOf } from './check.ts';

/** The load-test table as printed [F, V]. */
const PRINTED_FLOORS = [
  [0, 8.5],
  [10, 8.7],
  [20, 8.9],
  [30, 9.1],
  [40, 9.3],
  [50, 9.4],
  [60, 9.5],
] as const;

const floorAtFahrenheit = (fahrenheit: number): number =>
  valueOf(loadTestFloor(celsiusFromFahrenheit(fahrenheit)));

const floorCheck = (id: string, fahrenheit: number, expected: number, where: string): PublishedCheck => ({
  id,
  quantity: 'least voltage at the end of a 15 s load test [V]',
  source: 'vehicleServiceTexts',
  where,
  given: `${fahrenheit} F`,
  expected,
  digits: 2,
  ours: () => floorAtFahrenheit(fahrenheit),
});

const conversion = (id: string, end: 'low' | 'high', expected: number, source: string): PublishedCheck => ({
  id,
  quantity: 'SAE rating from DIN [A]',
  source,
  where: end === 'low' ? '1.5 x DIN + 40' : '1.7 x DIN',
  given: 'DIN 400 A',
  expected,
  digits: 0,
  ours: () => valueOf(convertRating(400, 'DIN', 'SAE'))[end],
});

const codeAt = (reading: number): string | undefined =>
  conditionCode(valueOf(judge({ reading, least: 800, volts: 12.8, celsius: 20 })), 'inStock', 1_100);

const verdicts: PublishedCheck[] = [
  {
    id: 'C6',
    quantity: 'least reading of a used battery that is issued without a remark [A]',
    source: 'tb9-6140-252-13',
    where: 'WP 0011: above 0.90 of the label',
    given: 'label 1100 A, whole amperes',
    expected: 990,
    digits: 0,
    ours: () =>
      Array.from({ length: 400 }, (_, step) => 800 + step).find((amps) => codeAt(amps) === 'A') ?? 0,
  },
  {
    id: 'C7',
    quantity: 'verdict on a load test at 60 % charge',
    source: 'vehicleServiceTexts',
    where: 'under 75 %: recharge first, do not judge',
    given: '8.0 V where 9.6 V is the least, rest voltage of 60 %, AGM, 25 C',
    expected: 'Awaiting charge',
    ours: () => valueOf(verdict({ reading: 8, least: 9.6, volts: valueOf(restVoltage(0.6)), celsius: 25 })),
  },
];

const amps: PublishedCheck[] = [
  {
    id: 'cranking at 0 F',
    quantity: 'cranking current left at the temperature of the rating [A]',
    source: 'saeJ537',
    where: 'the rating is taken at 0 F, which the trade writes -18 C',
    given: '1100 A, 0 F',
    expected: 1_100,
    tolerance: { within: 3, because: '0 F is -17.8 C and our line starts at -18 C' },
    ours: () => valueOf(crankingAmps(1_100, celsiusFromFahrenheit(0))),
  },
  {
    id: 'cranking at -20 F',
    quantity: 'cranking current left, as a share of that at 0 F',
    source: 'repairShopPage',
    where: '25 % at -20 F against 40 % at 0 F',
    given: '-20 F',
    expected: 0.625,
    tolerance: { within: 0.005, because: '-20 F is -28.9 C and our line starts at -29 C' },
    ours: () => valueOf(crankingAmps(1_000, celsiusFromFahrenheit(-20))) / 1_000,
  },
  {
    id: '6T AGM',
    quantity: 'load of half the specified rating [A]',
    source: 'tm9-6115-730-24',
    where: 'load test of the AGM battery',
    given: '6T AGM',
    expected: 550,
    digits: 0,
    ours: () => valueOf(specifiedAmps('6T AGM')) / 2,
  },
];

/** Published values of cranking tests and ratings. */
export const crankingChecks: readonly PublishedCheck[] = [
  floorCheck('C2', 70, 9.6, 'last row'),
  floorCheck('C3', 45, 9.35, 'between the rows 40 and 50 F'),
  floorCheck('C4', 95, 9.6, 'above 70 F'),
  ...PRINTED_FLOORS.map(([fahrenheit, volts]) =>
    floorCheck(`load test ${fahrenheit} F`, fahrenheit, volts, `row ${fahrenheit} F`),
  ),
  conversion('C5 low', 'low', 640, 'tradeDataSheets'),
  conversion('C5 high', 'high', 680, 'publicCalculators'),
  ...verdicts,
  ...amps,
];

/** Published figures of this room that nothing computes. */
export const crankingNotOurs: readonly NotOurs[] = [
  {
    id: 'C1',
    quantity: 'load test current of a battery rated 1100 A (550 A)',
    because: 'It is half the rating, which a user divides or reads off the tester; no function answers it.',
  },
  {
    id: 'C8',
    quantity: 'cranking power left at 16 F (52.5 % of that at 80 F)',
    because:
      'The published table counts from 80 F; our answer counts from the cold-cranking rating, which is already a figure for 0 F.',
  },
];
