import type { ParametricLife, ReplacementPolicy } from '../../../src/index.ts';
import {
  competingRemoval,
  failureWithin,
  lognormalHazardGain,
  lognormalLife,
  replacementPolicy,
  weibullLife,
} from '../../../src/index.ts';
import { valueOf } from '../../published/check.ts';
import competing from './competing.json' with { type: 'json' };
import conditional from './conditional.json' with { type: 'json' };
import type { Figure, ReferenceRow } from './referenceRow.ts';
import { figureRows, once } from './referenceRow.ts';
import replacement from './replacement.json' with { type: 'json' };

type Parameters = {
  readonly model: string;
  readonly shape?: number;
  readonly scale?: number;
  readonly mu?: number;
  readonly sigma?: number;
};

function lifeOf({ model, shape, scale, mu, sigma }: Parameters): ParametricLife {
  return model === 'weibull' ? weibullLife(shape!, scale!) : lognormalLife(mu!, sigma!);
}

// 1 - S(1) was taken at 40 digits, where 7.4e-41 is under the last one; two other programs give 7.4064127719e-41.
const DIGITS_RAN_OUT =
  'the reference is a difference from 1 taken at 40 digits, but the chance itself is 7.4e-41: its digits ran out; ours agrees with the normal tail';

/** Chances to fail within some months, far into tails where survival itself is no number. */
export const conditionalRows: readonly ReferenceRow[] = conditional.flatMap((each) =>
  Object.entries(each.expected).map(([quantity, [age, months, expected, within]]) => ({
    ...{
      id: each.id,
      title: each.title,
      source: each.source,
      quantity,
      expected: expected!,
      within: within!,
    },
    ours: () => chance(each.ask, age!, months!),
    ...(each.id === 'D-CP-03' && age === 0 && months === 1 ? { knownMiss: DIGITS_RAN_OUT } : {}),
  })),
);

function chance({ model, shape, scale, mu, sigma }: Parameters, age: number, months: number): number {
  if (model === 'weibull') return valueOf(failureWithin(age, months, shape!, scale!));
  return -Math.expm1(-lognormalHazardGain(age, months, mu!, sigma!));
}

/** Replacement ages of least cost, with the ages nearly as good. */
export const replacementRows: readonly ReferenceRow[] = replacement
  .filter(({ best }) => best)
  .flatMap((each) => {
    const { plannedCost, failureCost } = each.ask;
    const policy = once(() => valueOf(replacementPolicy(lifeOf(each.ask), plannedCost, failureCost)));
    return figureRows(
      each,
      each.expected as object as Readonly<Record<string, Figure>>,
      (name) => policy()[name as keyof ReplacementPolicy],
    );
  });

/** Cases in which waiting for failure is always cheaper: what it costs, and that no age is answered. */
export const waitingCases = replacement
  .filter(({ best }) => !best)
  .map((each) => ({
    ...{ id: each.id, title: each.title },
    costRate: each.expected.costRateWaiting as unknown as Figure,
    ours: () => each.ask.failureCost / lifeOf(each.ask).mean,
    policy: () => replacementPolicy(lifeOf(each.ask), each.ask.plannedCost, each.ask.failureCost),
  }));

/** Failure or another removal, whichever comes first. */
export const competingRows: readonly ReferenceRow[] = competing.flatMap((each) =>
  each.rows.flatMap(([age, months, ...expected]) => {
    const { shape, scale, otherRate } = each.ask;
    const ours = once(() => valueOf(competingRemoval(age!, months!, shape, scale, otherRate)));
    return (['failed', 'removedGood', 'monthsInService'] as const).map((name, column) => ({
      ...{ id: each.id, title: each.title, source: each.source },
      quantity: `${name}, age ${age}, ${months} months`,
      expected: expected[column]!,
      within: each.relative * expected[column]!,
      ours: () => ours()[name],
    }));
  }),
);
