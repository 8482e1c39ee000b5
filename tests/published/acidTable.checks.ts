import {
  acidFromPercent,
  acidGravity,
  acidMoleFraction,
  acidRestVolts,
} from '../../src/electrochemistry/acid.ts';
import { acidDensityPerry } from '../../src/electrochemistry/acid.perry.ts';
import type { PublishedCheck } from './check.ts';

/** Acid by weight [%]: molality, mole fraction, specific gravity 80/80 F, volts of six cells at 25 C, density at 25 C by Laliberté. */
const ROWS: readonly (readonly [number, number, number, number, number, number])[] = [
  [10, 1.1329, 0.020001, 1.0659, 11.581, 1.065],
  [15, 1.7993, 0.031397, 1.1025, 11.791, 1.1007],
  [20, 2.549, 0.043904, 1.1391, 11.991, 1.1377],
  [25, 3.3986, 0.057695, 1.178, 12.193, 1.1761],
  [30, 4.3697, 0.072976, 1.2181, 12.407, 1.2159],
  [33, 5.0218, 0.082964, 1.2429, 12.542, 1.2406],
  [35, 5.4901, 0.090004, 1.2594, 12.636, 1.2574],
  [37, 5.988, 0.097372, 1.2766, 12.734, 1.2744],
  [40, 6.7972, 0.109095, 1.3024, 12.887, 1.3005],
];

/** A table of battery acid worked out from the cited coefficients, and a second density to check the first. */
export const acidTableChecks: readonly PublishedCheck[] = ROWS.flatMap(
  ([weight, molality, fraction, gravity, volts, laliberte]) => {
    const row = (name: string) => ({
      id: `acid ${weight} % ${name}`,
      source: 'computed here',
      where: 'table of acid from the cited coefficients',
      given: `${weight} % by weight`,
    });
    const acid = acidFromPercent(weight);
    return [
      { ...row('mol'), quantity: 'acid in water [mol/kg]', expected: molality, digits: 4, ours: () => acid },
      {
        ...row('fraction'),
        quantity: 'mole fraction',
        expected: fraction,
        digits: 6,
        ours: () => acidMoleFraction(acid),
      },
      {
        ...row('gravity'),
        quantity: 'specific gravity at 80 F against water at 80 F',
        expected: gravity,
        tolerance: { within: 0.0001, because: 'the density of water was rounded before dividing' },
        ours: () => acidGravity(acid),
      },
      {
        ...row('volts'),
        quantity: 'rest voltage at 25 C [V]',
        expected: volts,
        digits: 3,
        ours: () => acidRestVolts(acid, 25),
      },
      {
        ...row('second density'),
        quantity: 'density at 25 C [g/mL]',
        source: 'laliberte2009',
        where: 'another correlation of measured densities',
        expected: laliberte,
        tolerance: { within: 0.002, because: 'the two correlations differ by up to 0.002 within 10 to 45 %' },
        ours: () => acidDensityPerry(weight, 25),
      },
    ];
  },
);
