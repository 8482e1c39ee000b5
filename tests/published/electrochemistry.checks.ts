import { celsiusFromFahrenheit, fahrenheitFromCelsius } from '../../src/basics/units.ts';
import {
  acidFromGravity,
  acidFromMoleFraction,
  acidMoleFraction,
  acidPercent,
  acidRestVolts,
  CELSIUS_AT_80_F,
} from '../../src/electrochemistry/acid.ts';
import { cellVoltageBode1977 } from '../../src/electrochemistry/acid.bode1977.ts';
import { acidDensityPerry } from '../../src/electrochemistry/acid.perry.ts';
import { acidFreezesAt } from '../../src/electrochemistry/freezingPoint.ts';
import { gravityAt80F } from '../../src/electrochemistry/gravityCharge.ts';
import { restVoltage } from '../../src/electrochemistry/restVoltage.ts';
import { stateOfCharge } from '../../src/electrochemistry/stateOfCharge.ts';
import type { Construction } from '../../src/service/battery.ts';
import type { PublishedCheck } from './check.ts';
import { valueOf } from './check.ts';
import { freezingChecks } from './freezing.checks.ts';
import { acidTableChecks } from './acidTable.checks.ts';
import { chargeTableChecks } from './chargeTable.checks.ts';

const percent = (volts: number, celsius: number, construction: Construction): number =>
  100 * valueOf(stateOfCharge(volts, celsius, construction));

/** Millivolts per kelvin of a whole battery, over two kelvin. */
const slope = (molality: number, celsius: number): number =>
  500 * (acidRestVolts(molality, celsius + 1) - acidRestVolts(molality, celsius - 1));

const physics: PublishedCheck[] = [
  {
    id: 'P1',
    quantity: 'cell voltage at 25 C [V]',
    source: 'bode1977',
    where: 'polynomial, all coefficients',
    given: '1 mol/kg',
    expected: 1.922,
    digits: 3,
    ours: () => cellVoltageBode1977(1),
  },
  {
    id: 'P2',
    quantity: 'cell voltage at 25 C [V]',
    source: 'bode1977',
    where: 'polynomial, computed here from its coefficients',
    given: '5 mol/kg',
    expected: 2.0896,
    digits: 4,
    ours: () => cellVoltageBode1977(5),
  },
  {
    id: 'P3',
    quantity: 'acid by weight [%]',
    source: 'computed here',
    where: 'molar masses 98.079 and 18.0153 g/mol',
    given: '5 mol/kg',
    expected: 32.9,
    digits: 1,
    ours: () => acidPercent(5),
  },
  {
    id: 'P4',
    quantity: 'density [g/mL]',
    source: 'perry',
    where: 'row 35 %',
    given: '35 %, 25 C',
    expected: 1.2564,
    digits: 4,
    ours: () => acidDensityPerry(35, 25),
  },
  {
    id: 'P5',
    quantity: 'change of density for 10 F near 80 F [g/mL]',
    source: 'tm5-4210-230-14',
    where: 'the hydrometer rule of 0.004, against the density of charged acid',
    given: '36 %',
    expected: -0.004,
    digits: 4,
    tolerance: { within: 0.0002, because: 'the rule is rounded to a whole thousandth' },
    ours: () =>
      acidDensityPerry(36, celsiusFromFahrenheit(85)) - acidDensityPerry(36, celsiusFromFahrenheit(75)),
  },
  {
    id: 'P6',
    quantity: 'specific gravity at 80 F',
    source: 'tm5-4210-230-14',
    where: 'correction of 0.004 per 10 F',
    given: 'reading 1.250 at 20 F',
    expected: 1.226,
    digits: 3,
    ours: () => gravityAt80F(1.25, celsiusFromFahrenheit(20)),
  },
  {
    id: 'P7',
    quantity: 'acid at half charge [mol/kg]',
    source: 'computed here',
    where: 'mole fraction on a straight line with charge',
    given: 'full 6, empty 2 mol/kg',
    expected: 3.9328,
    digits: 4,
    ours: () => acidFromMoleFraction((acidMoleFraction(6) + acidMoleFraction(2)) / 2),
  },
  {
    id: 'P8',
    quantity: 'change of rest voltage with temperature, flooded full [mV/K]',
    source: 'harnedHamer1935',
    where: 'columns a and b, from memory',
    given: '5.5495 mol/kg, 25 C',
    expected: 1.24,
    digits: 2,
    ours: () => slope(5.5495, 25),
  },
];

const charge: PublishedCheck[] = [
  {
    id: 'T1',
    quantity: 'state of charge [%]',
    source: 'computed here',
    where: 'Bode 1977 between the ends of the BCI-credited table, which itself says 75 %',
    given: '12.45 V, 80 F, flooded',
    expected: 72.2,
    digits: 1,
    ours: () => percent(12.45, CELSIUS_AT_80_F, 'flooded'),
  },
  {
    id: 'T2',
    quantity: 'state of charge [%]',
    source: 'computed here',
    where: 'Bode 1977 between the ends of the BCI-credited table, which itself says 50 %',
    given: '12.24 V, 80 F, flooded',
    expected: 43.9,
    digits: 1,
    ours: () => percent(12.24, CELSIUS_AT_80_F, 'flooded'),
  },
  {
    id: 'T3',
    quantity: 'state of charge [%]',
    source: 'computed here',
    where: 'default AGM curve',
    given: '12.615 V, 25 C, AGM',
    expected: 75,
    digits: 1,
    ours: () => percent(12.615, 25, 'AGM'),
  },
  {
    id: 'T4',
    quantity: 'rest voltage [V]',
    source: 'computed here',
    where: 'default AGM curve',
    given: '50 %, -18 C, AGM',
    expected: 12.327,
    digits: 3,
    ours: () => valueOf(restVoltage(0.5, -18, 'AGM')),
  },
  {
    id: 'T5',
    quantity: 'error of a cold reading taken for one at 25 C [points]',
    source: 'computed here',
    where: 'default AGM curve',
    given: 'true 75 % at -18 C, AGM',
    expected: -4.6,
    digits: 1,
    ours: () => percent(valueOf(restVoltage(0.75, -18, 'AGM')), 25, 'AGM') - 75,
  },
  {
    id: 'T6',
    quantity: 'what is said of a voltage above full',
    source: 'common practice',
    where: 'a battery read half an hour off the charger is not at rest',
    given: '13.2 V, 25 C, AGM',
    expected: 'notRested',
    ours: () => {
      const outcome = stateOfCharge(13.2, 25, 'AGM');
      return outcome.ok ? 'answered' : outcome.problem.because;
    },
  },
  {
    id: 'T7',
    quantity: 'freezing point [F]',
    source: 'tm5-1185',
    where: 'straight line between its rows 1.150 and 1.200',
    given: 'specific gravity 1.175',
    expected: -5.5,
    digits: 1,
    ours: () => fahrenheitFromCelsius(acidFreezesAt(1.175)),
  },
  {
    id: 'AGM full, manual',
    quantity: 'rest voltage of a full AGM battery [V]',
    source: 'tm9-6115-730-24',
    where: '12.8 to 13.0 V after 3 to 8 h at about 70 F',
    given: '100 %, 70 F, AGM',
    expected: 12.9,
    tolerance: { within: 0.1, because: 'the manual prints a range from 12.8 to 13.0 V' },
    ours: () => valueOf(restVoltage(1, celsiusFromFahrenheit(70), 'AGM')),
  },
  {
    id: 'AGM in use, manual',
    quantity: 'charge of a good used AGM battery 8 h off charge [%]',
    source: 'tb9-6140-252-13',
    where: 'WP 0011: more than 12.65 V after 8 h; the manual charges under 75 %',
    given: '12.65 V, 25 C, AGM',
    expected: 75,
    tolerance: { within: 5, because: 'the two limits stand in different texts and are each rounded' },
    ours: () => percent(12.65, 25, 'AGM'),
  },
];

// Acid [mol/kg]; independent slope of one cell [mV/K].
const SLOPES: readonly [number, number][] = [
  [0.5, -0.006],
  [1, 0.11],
  [2, 0.213],
  [3, 0.242],
  [4, 0.229],
  [5, 0.198],
  [6, 0.174],
];

const slopes = SLOPES.map(([molality, expected]): PublishedCheck => ({
  id: `slope ${molality}`,
  quantity: 'change of cell voltage with temperature [mV/K]',
  source: 'crp1994',
  where: 'activities, with 1.364 mV/K for the standard cell',
  given: `${molality} mol/kg, 25 C`,
  expected,
  tolerance: {
    within: 0.035,
    because: 'columns a, b are from memory; the slope itself is good to 0.02 mV/K',
  },
  ours: () => slope(molality, 25) / 6,
}));

// Acid at 25 C [mol/kg] and one cell's voltage as the polynomial gives it [V].
const CELLS_AT_25: readonly [number, number][] = [
  [0.5, 1.8814],
  [2, 1.9746],
  [3, 2.0168],
  [4, 2.0546],
  [6, 2.1226],
  [7, 2.1541],
];

const cells = CELLS_AT_25.map(([molality, expected]): PublishedCheck => ({
  id: `cell ${molality}`,
  quantity: 'cell voltage at 25 C [V]',
  source: 'bode1977',
  where: 'polynomial, computed here from its coefficients',
  given: `${molality} mol/kg`,
  expected,
  digits: 4,
  ours: () => cellVoltageBode1977(molality),
}));

const REMEMBERED_DENSITY: readonly [number, number][] = [
  [20, 1.1394],
  [25, 1.1783],
  [30, 1.2185],
  [35, 1.2599],
  [40, 1.3028],
];

const densities = REMEMBERED_DENSITY.map(([weight, expected]): PublishedCheck => ({
  id: `density ${weight} % at 20 C`,
  quantity: 'density [g/mL]',
  source: 'from memory',
  where: 'handbook column at 20 C',
  given: `${weight} %, 20 C`,
  expected,
  tolerance: { within: 0.0001, because: 'both columns are rounded to 0.0001' },
  ours: () => acidDensityPerry(weight, 20),
}));

// The Army's words for specific gravity, as shares between its own full 1.280 and discharged 1.130.
const ARMY_WORDS: readonly [number, number][] = [
  [1.25, 77.8],
  [1.22, 56.8],
  [1.19, 36.9],
  [1.16, 18.0],
];
const fractionAt = (gravity: number): number => acidMoleFraction(valueOf(acidFromGravity(gravity)));

const armyShares = ARMY_WORDS.map(([gravity, expected]): PublishedCheck => ({
  id: `army share ${gravity.toFixed(3)}`,
  quantity: 'charge between the acids that one manual calls full and discharged [%]',
  source: 'computed here',
  where: 'mole fraction between specific gravity 1.280 and 1.130 of TM 5-1185',
  given: `specific gravity ${gravity.toFixed(3)}`,
  expected,
  digits: 1,
  ours: () => (100 * (fractionAt(gravity) - fractionAt(1.13))) / (fractionAt(1.28) - fractionAt(1.13)),
}));

/** Published values of the electrochemistry room. */
export const electrochemistryChecks: readonly PublishedCheck[] = [
  ...physics,
  ...charge,
  ...cells,
  ...slopes,
  ...densities,
  ...acidTableChecks,
  ...chargeTableChecks,
  ...armyShares,
  ...freezingChecks,
];
