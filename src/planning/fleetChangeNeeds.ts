import type { PlanPeriod } from './fiscalYears.ts';
import type { FleetChange } from './planSettings.ts';
import { dayOfMonth } from './yearOrders.ts';

/**
 * What changes of the fleet add to or take from the batteries that each year needs, to one decimal. A place that is
 * added takes one new battery in its month, which is not expected to fail within the plan; a place that is given up
 * no longer needs its share of the replacements from its month on, whichever battery it holds.
 * @param years      fiscal years of the plan
 * @param expected   replacements expected in each year with no change
 * @param inService  places at as-of
 * @param changes    from the settings
 */
export function fleetChangeNeeds(
  years: readonly PlanPeriod[],
  expected: readonly number[],
  inService: number,
  changes: readonly FleetChange[],
): number[] {
  return years.map((year, index) => {
    const sum = changes.reduce(
      (all, change) => all + needOf(change, year, index === 0, expected[index]! / inService),
      0,
    );
    return Math.round(sum * 10) / 10;
  });
}

function needOf({ month, count }: FleetChange, year: PlanPeriod, first: boolean, perPlace: number): number {
  const day = dayOfMonth(month);
  if (day > year.to) return 0;
  if (count > 0) return first || day >= year.from ? count : 0;
  const left = (year.to - Math.max(day, year.from) + 1) / (year.to - year.from + 1);
  return count * perPlace * left;
}
