import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer, problem } from '../basics/outcome.ts';
import { ratingAmps } from './ratingAmps.ts';

/** Battery temperature [C] and the share of its cold-cranking rating that a full battery delivers there. */
const ROWS = [
  // 25 of 40 parts of its power at 80 F, as one published page has it for -20 F and 0 F.
  [-29, 0.625],
  // The rating itself is taken at 0 F.
  [-18, 1],
  // From memory: 0 C ratings are 1.2 to 1.3 of it, 27 C ratings 1.4 to 1.8; the low ends.
  [0, 1.2],
  [27, 1.4],
] as const;

const COLDEST = ROWS[0][0];
const WARMEST = ROWS[ROWS.length - 1]![0];

/**
 * About how much cranking current a fully charged battery has left, from its cold-cranking rating and temperature:
 * straight lines between four points. The rating is already a figure for -18 C (0 F), so there it stands as it is; the
 * published table that gives 40 % at 0 F is of the power at 80 F and must not be applied to it. A guide to what an
 * engine may get, never a verdict.
 * @param rating cold-cranking rating [A], 50 to 5000
 * @param celsius battery temperature [C], -29 to 27
 * @returns current for 30 s to 7.2 V [A]
 * @problem badInput       when rating or temperature are no numbers
 * @problem outOfRange     when the rating is outside 50 to 5000 A
 * @problem notEnoughData  when the temperature is outside -29 to 27 C
 * @source saeJ537 the rating is taken at 0 F (-18 C)
 * @source repairShopPage 25 against 40 % at -20 and 0 F
 * @source fromMemory 1.2 at 0 C and 1.4 at 27 C
 * @example crankingAmps(1100, -18) // 1100
 */
export function crankingAmps(rating: number, celsius: number): Outcome<number> {
  return andThen(ratingAmps(rating, 'rating'), (amps) => {
    if (!Number.isFinite(celsius)) return problem('badInput', 'notANumber', 'temperature', celsius);
    if (celsius < COLDEST || celsius > WARMEST) return outsideGuide(celsius);
    return answer(amps * shareAt(celsius));
  });
}

function shareAt(celsius: number): number {
  const above = ROWS.findIndex((row) => row[0] >= celsius);
  const [low, high] = [ROWS[Math.max(above - 1, 0)]!, ROWS[Math.max(above, 1)]!];
  return low[1] + ((celsius - low[0]) / (high[0] - low[0])) * (high[1] - low[1]);
}

function outsideGuide(celsius: number): Outcome<number> {
  const given = Number(celsius.toFixed(1));
  return problem('notEnoughData', 'outsideCrankingGuide', 'temperature', given, {
    limits: [COLDEST, WARMEST],
  });
}
