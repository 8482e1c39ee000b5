import { DAYS_PER_MONTH, celsiusFromFahrenheit } from '../../src/basics/units.ts';
import { restVoltage } from '../../src/electrochemistry/restVoltage.ts';
import { rechargeBy } from '../../src/storage/rechargeBy.ts';
import { chargeLostPerDay, gravityLostPerDay, selfDischarge } from '../../src/storage/selfDischarge.ts';
import type { NotOurs, PublishedCheck } from './check.ts';
import { valueOf } from './check.ts';

const percentAMonth = (celsius: number): number =>
  100 * valueOf(selfDischarge(DAYS_PER_MONTH, celsius, 'AGM'));

const JANUARY_1_2026 = 46_023;

const losses: PublishedCheck[] = [
  {
    id: 'S1',
    quantity: 'specific gravity after 30 days in store',
    source: 'tm9-6140-200-14',
    where: 'page 4-14: 0.001 a day at 80 F',
    given: '1.265, 30 days, 80 F, flooded',
    expected: 1.235,
    digits: 3,
    ours: () => 1.265 - 30 * gravityLostPerDay(celsiusFromFahrenheit(80)),
  },
  {
    id: 'S2',
    quantity: 'charge lost in a month [%]',
    source: 'common practice',
    where: '2 % a month at 25 C, doubling per 10 K',
    given: '35 C, AGM',
    expected: 4,
    digits: 2,
    ours: () => percentAMonth(35),
  },
  {
    id: 'S3',
    quantity: 'months from 100 to 80 % in store',
    source: 'computed here',
    where: 'in a straight line at 2 % a month; compounding would give 11.05',
    given: '25 C, AGM',
    expected: 10,
    digits: 1,
    ours: () => 0.2 / valueOf(chargeLostPerDay(25, 'AGM')) / DAYS_PER_MONTH,
  },
  {
    id: 'S4',
    quantity: 'rest voltage at which a stored battery is to be charged again [V]',
    source: 'computed here',
    where: 'default AGM curve at 80 %',
    given: '80 %, 25 C, AGM',
    expected: 12.663,
    digits: 3,
    ours: () => valueOf(restVoltage(0.8, 25, 'AGM')),
  },
  {
    id: 'S4 flooded',
    quantity: 'rest voltage at which a stored battery is to be charged again [V]',
    source: 'computed here',
    where: 'flooded curve at 80 %',
    given: '80 %, 25 C, flooded',
    expected: 12.505,
    digits: 3,
    ours: () => valueOf(restVoltage(0.8, 25, 'flooded')),
  },
];

const GRAVITY_RATES: readonly [number, number][] = [
  [100, 0.0025],
  [80, 0.001],
  [50, 0.0003],
];

const rates = GRAVITY_RATES.map(([fahrenheit, expected]): PublishedCheck => ({
  id: `flooded loss at ${fahrenheit} F`,
  quantity: 'specific gravity lost in a day',
  source: 'tm9-6140-200-14',
  where: 'page 4-14, antimony plates, first ten days',
  given: `${fahrenheit} F`,
  expected,
  digits: 4,
  ours: () => gravityLostPerDay(celsiusFromFahrenheit(fahrenheit)),
}));

// Another table of many types: temperature [C] and AGM loss [% a month].
const OTHER_AGM: readonly [number, number][] = [
  [20, 3],
  [10, 1.5],
];

const others = OTHER_AGM.map(([celsius, expected]): PublishedCheck => ({
  id: `AGM loss at ${celsius} C, another table`,
  quantity: 'charge lost in a month [%]',
  source: 'common practice',
  where: 'a published table of many battery types, maker and date not given',
  given: `${celsius} C, AGM`,
  expected,
  digits: 1,
  ours: () => percentAMonth(celsius),
  knownMiss: 'we keep the more common 2 % a month at 25 C; the six-month limit comes first at either rate',
}));

const limits: PublishedCheck[] = [
  {
    id: 'flooded look every 30 days',
    quantity: 'days until charge again',
    source: 'tm9-6140-200-14',
    where: 'stored batteries are looked at every 30 days',
    given: 'flooded, 80 F',
    expected: 30,
    tolerance: { within: 3, because: 'the manual gives a round figure for warm stores in general' },
    ours: () => valueOf(rechargeBy(JANUARY_1_2026, celsiusFromFahrenheit(80), 'flooded')) - JANUARY_1_2026,
  },
  {
    id: 'AGM charge within 6 months',
    quantity: 'days until charge again',
    source: 'common practice',
    where: 'AGM: 6 to 8 months is the published limit; ours is the earlier end, 1 January to 1 July',
    given: 'AGM, 25 C',
    expected: 181,
    digits: 0,
    ours: () => valueOf(rechargeBy(JANUARY_1_2026, 25, 'AGM')) - JANUARY_1_2026,
  },
  {
    id: 'flooded charge every 4 months',
    quantity: 'days until charge again in a cold store',
    source: 'tm9-6140-200-14',
    where: 'antimony plates: 4 months at most, 1 January to 1 May',
    given: 'flooded, 0 C',
    expected: 120,
    digits: 0,
    ours: () => valueOf(rechargeBy(JANUARY_1_2026, 0, 'flooded')) - JANUARY_1_2026,
    knownMiss: 'we take 3 months, between looking every 30 days and the 4 months that are the utmost',
  },
];

/** Published values of the storage room. */
export const storageChecks: readonly PublishedCheck[] = [...losses, ...rates, ...others, ...limits];

/** Figures on ageing, lifting and shipping that no function here computes. */
export const storageNotOurs: readonly NotOurs[] = [
  {
    id: 'A1',
    quantity: 'life halves for each 10 K warmer (factor 0.5 at 35 C)',
    because:
      'Lives are fitted to your own removals at your own sites, so no function corrects them for temperature.',
  },
  {
    id: 'A2',
    quantity: 'life halves for each 15 F warmer (factor 0.5 at 92 F)',
    because: 'The second published rule disagrees with the first; neither is used, for the same reason.',
  },
  {
    id: 'Z1',
    quantity: 'lifting index of 40 kg in the best posture, 1.739',
    because: 'Nothing computes a lift: every place that speaks of handling says two-person lift or hoist.',
  },
  {
    id: 'Z2',
    quantity: 'recommended weight limit of a lift from the floor, 11.0 kg (index 3.64 for 40 kg)',
    because: 'Nothing computes a lift: the answer would be two-person lift or hoist for any posture.',
  },
  {
    id: 'Z3',
    quantity: 'UN2800, NONSPILLABLE, for an intact AGM battery that passed its tests',
    because: 'The tool makes no shipping papers; the class depends on tests and damage that no sheet proves.',
  },
  {
    id: 'Z4',
    quantity: 'UN2794 for a flooded battery',
    because: 'The tool makes no shipping papers, so no function answers a UN number.',
  },
];
