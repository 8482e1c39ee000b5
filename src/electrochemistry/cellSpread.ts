import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';
import { CELLS } from '../basics/units.ts';
import { hydrometerGravity } from './gravityCharge.ts';

const LEAST_CELLS = 2;

/** Far finer than any hydrometer; without it 1.265 less 1.240 is a hair under 0.025 and a limit of 0.025 misses it. */
const STEPS_PER_UNIT = 1e6;

/**
 * Largest difference in specific gravity between the cells of one battery. No temperature is asked for: the cells are
 * read together and a correction would be the same for all. One manual calls a fully charged battery with more than
 * 0.025 between any two cells unserviceable; another renews it over 0.050 where charging doesn't bring it down.
 * @param gravities hydrometer readings of two to six cells, each 1.000 to 1.400
 * @returns difference, 0 to 0.400
 * @problem badInput       when a reading is no number, or there are more than six
 * @problem outOfRange     when a reading is outside 1.000 to 1.400
 * @problem notEnoughData  when there are fewer than two readings
 * @source tm9-6140-200-14 paragraph 4-7: 0.025
 * @source tm5-3805-281-24-2 hydrometer test: 0.050
 * @example cellSpread([1.265, 1.26, 1.24]) // 0.025
 */
export function cellSpread(gravities: readonly number[]): Outcome<number> {
  const cells = gravities.length;
  if (cells > CELLS) return problem('badInput', 'tooManyCells', 'gravities', cells);
  for (const gravity of gravities) {
    const checked = hydrometerGravity(gravity);
    if (!checked.ok) return checked;
  }
  if (cells < LEAST_CELLS) return problem('notEnoughData', 'tooFewCells', 'gravities', cells);
  const spread = Math.max(...gravities) - Math.min(...gravities);
  return answer(Math.round(spread * STEPS_PER_UNIT) / STEPS_PER_UNIT);
}
