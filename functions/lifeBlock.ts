import type { Outcome } from '../src/basics/outcome.ts';
import { andThen, answer, problem } from '../src/basics/outcome.ts';
import { posteriorOfSample } from '../src/life/lifePosterior.ts';
import type { LifeSample } from '../src/life/lifeSample.ts';
import { lifeSampleFromColumns } from '../src/life/lifeSample.ts';
import type { LifeBelief } from '../src/planning/lattice.ts';
import { asBlock, numberFrom } from './cell.ts';
import { lifeColumns } from './lifeColumns.ts';

/**
 * What a `life` argument says: two cells are Weibull shape and scale; a block of two or three columns is a
 * removal history (months, failed, ageAtRecordStart), from which the belief is made.
 */
export function lifeBelief(given: unknown): Outcome<LifeBelief> {
  const block = asBlock(given);
  const columns = block[0]?.length ?? 0;
  if (block.length * columns === 2) return knownLife(block.flat());
  if (columns < 2 || columns > 3) {
    return problem('badInput', 'lifeBlockShape', 'life', undefined, {
      more: { rows: block.length, columns },
    });
  }
  const [months, failed, ageAtRecordStart] = [0, 1, 2].map((column) => block.map((row) => [row[column]]));
  const history = { months, failed, ageAtRecordStart: columns === 3 ? ageAtRecordStart : null };
  return andThen(lifeColumns(history), (lives) => beliefFrom(lifeSampleFromColumns(lives)));
}

// A table of cells has no room to say that it is mostly assumption, so without a failure there is none.
function beliefFrom(sample: LifeSample): Outcome<LifeBelief> {
  if (sample.failures === 0) return problem('notEnoughData', 'noFailures', 'life');
  return answer(posteriorOfSample(sample));
}

function knownLife([shape, scale]: readonly unknown[]): Outcome<LifeBelief> {
  return andThen(within(shape, 'shape', 0.05, 200), (known) =>
    andThen(within(scale, 'scale', 0.01, 100_000), (size) =>
      answer<LifeBelief>({ shape: known, scale: size }),
    ),
  );
}

function within(given: unknown, argument: string, least: number, most: number): Outcome<number> {
  return andThen(numberFrom(given, argument), (value) =>
    value >= least && value <= most
      ? answer(value)
      : problem('outOfRange', 'outOfLimits', argument, value, { limits: [least, most] }),
  );
}
