import type { Day } from '../basics/calendar.ts';
import { addMonths, dayFromParts, dayParts } from '../basics/calendar.ts';
import { DAYS_PER_MONTH } from '../basics/units.ts';
import type { FiscalLabel } from '../service/fiscalPeriod.ts';
import { fiscalYearName } from '../service/fiscalPeriod.ts';

/** A stretch of time in the plan. Months are counted from as-of, 30.4375 days each. */
export type PlanPeriod = {
  readonly label: string;
  readonly from: Day;
  /** Last day of it. */
  readonly to: Day;
  readonly startMonth: number;
  readonly endMonth: number;
};

/**
 * The fiscal years of a plan: first what is left of the one that holds as-of, then whole ones.
 * @param asOf        the day of the plan
 * @param firstMonth  first month of the fiscal year, 1 to 12
 * @param count       how many years, the begun one counted
 * @param label       by which calendar year a fiscal year is named; default the one in which it ends
 * @returns the years in order; the first begins at as-of
 */
export function fiscalYears(
  asOf: Day,
  firstMonth: number,
  count: number,
  label: FiscalLabel = 'endYear',
): PlanPeriod[] {
  const { year, month } = dayParts(asOf);
  const firstEnd = dayFromParts(month >= firstMonth ? year + 1 : year, firstMonth, 1)!;
  return Array.from({ length: count }, (_, index) => {
    const from = index === 0 ? asOf : addMonths(firstEnd, 12 * (index - 1));
    const to = addMonths(firstEnd, 12 * index) - 1;
    return period(fiscalYearName(dayParts(to).year, firstMonth, label), from, to, asOf);
  });
}

/**
 * The calendar months from as-of to a last day; the first is what is left of its month.
 * @returns the months in order, labelled 2026-07
 */
export function planMonths(asOf: Day, last: Day): PlanPeriod[] {
  const months: PlanPeriod[] = [];
  // On the last day of a month nothing of that month is left.
  let from = dayParts(asOf + 1).day === 1 ? asOf + 1 : asOf;
  while (from <= last) {
    const { year, month } = dayParts(from);
    const next = addMonths(dayFromParts(year, month, 1)!, 1);
    months.push(period(`${year}-${String(month).padStart(2, '0')}`, from, next - 1, asOf));
    from = next;
  }
  return months;
}

// Demand begins the moment after as-of: a period that starts later than as-of begins at the end of the day before.
function period(label: string, from: Day, to: Day, asOf: Day): PlanPeriod {
  const startMonth = Math.max(0, from - 1 - asOf) / DAYS_PER_MONTH;
  return { label, from, to, startMonth, endMonth: Math.max(0, to - asOf) / DAYS_PER_MONTH };
}
