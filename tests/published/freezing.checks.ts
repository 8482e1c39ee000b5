import { fahrenheitFromCelsius } from '../../src/basics/units.ts';
import { acidFreezesAt } from '../../src/electrochemistry/freezingPoint.ts';
import type { PublishedCheck } from './check.ts';

// Specific gravity, freezing point as printed [F], the ice calculation [C] where there is one.
const FREEZING: readonly [number, number, number?][] = [
  [1.0, 32],
  [1.05, 27, -3.3],
  [1.1, 19, -7.8],
  [1.15, 5, -15.7],
  [1.2, -16, -30.2],
  [1.225, -35, -38.3],
  [1.25, -62],
  [1.265, -75],
  [1.28, -90],
];

/** Published freezing points of battery acid, and an independent calculation beside them. */
export const freezingChecks: readonly PublishedCheck[] = FREEZING.flatMap(
  ([gravity, fahrenheit, ice]): PublishedCheck[] => {
    const shared = {
      given: `specific gravity ${gravity.toFixed(3)} at 80 F`,
      ours: () => acidFreezesAt(gravity),
    };
    const printed: PublishedCheck = {
      ...shared,
      id: `freezing ${gravity.toFixed(3)}`,
      quantity: 'freezing point [F]',
      source: 'tm5-1185',
      where: 'freezing table; 1.050, 1.225 and 1.265 from vehicle manuals, 1.000 from OD1002',
      expected: fahrenheit,
      digits: 0,
      ours: () => fahrenheitFromCelsius(acidFreezesAt(gravity)),
    };
    if (ice === undefined) return [printed];
    const because = 'the printed table and a calculation of ice in acid agree within 3.5 K';
    return [
      printed,
      {
        ...shared,
        id: `ice ${gravity.toFixed(3)}`,
        quantity: 'temperature at which ice forms [C]',
        source: 'crp1994',
        where: 'water activity of the acid against that of ice',
        expected: ice,
        tolerance: { within: 3.55, because },
      },
    ];
  },
);
