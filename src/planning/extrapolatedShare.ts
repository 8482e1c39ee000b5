import { failureChance } from '../life/failureChance.ts';
import type { Fleet } from './planViews.ts';

const MONTHS = 12;

/**
 * Share of the failures expected within 12 months that come at ages beyond the oldest failure on record: what the
 * records have not seen and the law of the life alone says.
 * @param fleet          places with the belief about their life
 * @param oldestFailure  oldest age at which a failure is on record [months]; 0 = none, and all is extrapolated
 * @returns share, 0 to 1; 0 where nothing is expected
 */
export function extrapolatedShare({ groups, meanAge }: Fleet, oldestFailure: number): number {
  let [all, seen] = [0, 0];
  for (const { life, places } of groups) {
    for (const [month, count] of countsByMonth(places)) {
      const age = meanAge.get(month)!;
      all += count * failureChance(age, MONTHS, life);
      seen += count * failureChance(age, Math.max(0, Math.min(MONTHS, oldestFailure - age)), life);
    }
  }
  return all > 0 ? 1 - seen / all : 0;
}

function countsByMonth(places: Fleet['groups'][number]['places']): Map<number, number> {
  const counts = new Map<number, number>();
  for (const { months } of places) {
    for (const [month, share] of months) counts.set(month, (counts.get(month) ?? 0) + share);
  }
  return counts;
}
