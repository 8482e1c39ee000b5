import type { LifeEstimate, LifeModel, LifeRecord } from '../../src/index.ts';
import {
  failureWithin,
  lifeEstimate,
  remainingLife,
  replacementAge,
  survival,
  weibullMean,
} from '../../src/index.ts';
import { readLives } from '../life/reference/readLives.ts';
import type { PublishedCheck } from './check.ts';
import { valueOf } from './check.ts';

/** Years in service of 40 car batteries in a statistics textbook's table. */
const CAR_BATTERIES = [
  2.2, 4.1, 3.5, 4.5, 3.2, 3.7, 3.0, 2.6, 3.4, 1.6, 3.1, 3.3, 3.8, 3.1, 4.7, 3.7, 2.5, 4.3, 3.4, 3.6, 2.9,
  3.3, 3.9, 3.1, 3.3, 3.1, 3.7, 4.4, 3.2, 4.1, 1.9, 3.4, 4.7, 3.8, 3.2, 2.6, 3.9, 3.0, 4.2, 3.5,
];

const carBatteries: readonly LifeRecord[] = CAR_BATTERIES.map((years) => ({
  ...{ kind: 'exact', entry: 0, from: years, to: years, count: 1 },
}));

const fit = (lives: readonly LifeRecord[], model?: LifeModel): LifeEstimate =>
  valueOf(lifeEstimate(lives, model));
const shape = (lives: readonly LifeRecord[]): number => 1 / fit(lives).sigma;
const scale = (lives: readonly LifeRecord[], model?: LifeModel): number => Math.exp(fit(lives, model).mu);

/** Figures of a sample: a row for each, all from one source. */
function figures(
  source: string,
  where: string,
  given: string,
  rows: readonly Pick<PublishedCheck, 'id' | 'quantity' | 'expected' | 'digits' | 'tolerance' | 'ours'>[],
): PublishedCheck[] {
  return rows.map((row) => ({ source, where, given, ...row }));
}

const weibullFigures = figures(
  'computed here',
  'equation of the Weibull distribution',
  'shape 3, scale 60 months',
  [
    {
      id: 'A3',
      quantity: 'share still good at 36 months',
      expected: 0.8057,
      digits: 4,
      ours: () => valueOf(survival(36, 3, 60)),
    },
    {
      id: 'A4',
      quantity: 'age by which a tenth has failed [months]',
      expected: 28.34,
      digits: 2,
      ours: () => valueOf(remainingLife(0, 3, 60, 0.1)),
    },
    {
      id: 'A5',
      quantity: 'chance to fail in the next 12 months at 36',
      expected: 0.2562,
      digits: 4,
      ours: () => valueOf(failureWithin(36, 12, 3, 60)),
    },
  ],
);

const textbookBatteries = figures(
  'walpoleMyers',
  'table of 40 car battery lives; the fit computed by a separate program',
  '40 lives, all failed, years',
  [
    { id: 'A6', quantity: 'Weibull shape', expected: 5.67, digits: 2, ours: () => shape(carBatteries) },
    {
      id: 'A6 scale',
      quantity: 'Weibull scale [years]',
      expected: 3.689,
      digits: 3,
      ours: () => scale(carBatteries),
    },
    {
      id: 'A6 mean',
      quantity: 'mean of the lives [years]',
      expected: 3.4125,
      digits: 4,
      ours: () => CAR_BATTERIES.reduce((sum, years) => sum + years, 0) / CAR_BATTERIES.length,
    },
  ],
);

const censoredTest = figures('nistHandbook', 'section 8.4.1.3', '10 failures of 20 in 500 hours', [
  {
    id: 'L1 scale',
    quantity: 'Weibull scale [h]',
    expected: 606.528,
    digits: 3,
    ours: () => scale(readLives('censoredTest')),
  },
  {
    id: 'L1 shape',
    quantity: 'Weibull shape',
    expected: 1.7208,
    digits: 4,
    ours: () => shape(readLives('censoredTest')),
  },
  {
    id: 'L1 log-likelihood',
    quantity: 'Weibull log-likelihood',
    expected: -75.135,
    digits: 3,
    ours: () => fit(readLives('censoredTest')).logLikelihood,
  },
  {
    id: 'L1 AIC',
    quantity: 'Weibull AIC',
    expected: 154.27,
    digits: 2,
    ours: () => 4 - 2 * fit(readLives('censoredTest')).logLikelihood,
  },
  {
    id: 'L1 mean',
    quantity: 'Weibull mean life [h]',
    expected: 540.737,
    digits: 3,
    ours: () => weibullMean(shape(readLives('censoredTest')), scale(readLives('censoredTest'))),
  },
  {
    id: 'L1 lognormal AIC',
    quantity: 'lognormal AIC',
    expected: 154.39,
    digits: 2,
    ours: () => 4 - 2 * fit(readLives('censoredTest'), 'lognormal').logLikelihood,
  },
]);

const bearingCages = figures(
  'abernethyEtAl1983',
  'bearing cages, as fitted in meekerEscobar1998; from memory',
  '6 failures of 1703',
  [
    {
      id: 'L2 shape',
      quantity: 'Weibull shape',
      expected: 2.035,
      digits: 3,
      ours: () => shape(readLives('bearingCages')),
    },
    {
      id: 'L2 scale',
      quantity: 'Weibull scale [h]',
      expected: 11792,
      digits: 0,
      ours: () => scale(readLives('bearingCages')),
    },
  ],
);

const ballBearings = figures(
  'liebleinZelen1956',
  'ball bearings, as fitted in later textbooks; from memory',
  '23 bearings, all failed',
  [
    {
      id: 'L3 shape',
      quantity: 'Weibull shape',
      expected: 2.1,
      digits: 1,
      ours: () => shape(readLives('ballBearings')),
    },
    {
      id: 'L3 scale',
      quantity: 'Weibull scale [million turns]',
      expected: 81.9,
      digits: 1,
      ours: () => scale(readLives('ballBearings')),
    },
  ],
);

const nelson = figures(
  'nelson1982',
  'locomotive controls, natural logs; from memory',
  '37 failures of 96, thousands of miles',
  [
    {
      id: 'L4 mu',
      quantity: 'lognormal mu',
      expected: 5.117,
      digits: 3,
      ours: () => fit(readLives('locomotiveControls'), 'lognormal').mu,
    },
    {
      id: 'L4 sigma',
      quantity: 'lognormal sigma',
      expected: 0.7055,
      digits: 4,
      ours: () => fit(readLives('locomotiveControls'), 'lognormal').sigma,
    },
  ],
);

const fans = figures('nelson1982', 'generator fans: 344,440 h in 12 failures', '12 failures of 70', [
  {
    id: 'L5',
    quantity: 'exponential mean life [h]',
    expected: 344_440 / 12,
    tolerance: { within: 1e-6, because: 'total time over failures is exact' },
    ours: () => scale(readLives('generatorFans'), 'exponential'),
  },
]);

const particles = figures(
  'berkson1966',
  'as fitted in meekerEscobar1998; from memory',
  '200 times, known between two',
  [
    {
      id: 'L6',
      quantity: 'exponential mean [1/5000 s]',
      expected: 572.3,
      digits: 1,
      ours: () => scale(readLives('alphaParticles'), 'exponential'),
    },
  ],
);

const costs = figures(
  'from memory',
  'a public worked example of replacement by age',
  'shape 2.5, scale 1000, costs 1 and 5',
  [
    {
      id: 'L7',
      quantity: 'age of least cost',
      expected: 493.047,
      digits: 3,
      ours: () => valueOf(replacementAge(2.5, 1000, 1, 5)),
    },
  ],
);

/** Life statistics beside published values. Many more, figure by figure, are in tests/life/reference. */
export const lifeChecks: readonly PublishedCheck[] = [
  ...weibullFigures,
  ...textbookBatteries,
  ...censoredTest,
  ...bearingCages,
  ...ballBearings,
  ...nelson,
  ...fans,
  ...particles,
  ...costs,
];
