import type { Day } from '../basics/calendar.ts';
import { fiscalPeriod } from '../service/fiscalPeriod.ts';
import type { CountWindow } from './countCells.ts';
import type { PlanPeriod } from './fiscalYears.ts';
import { fiscalYears, planMonths } from './fiscalYears.ts';
import type { PlanSettings } from './planSettings.ts';

/** The stretches of time into which a plan is divided: fiscal years, fiscal quarters, calendar months. */
export type PlanPeriods = {
  readonly years: readonly PlanPeriod[];
  readonly quarters: readonly PlanPeriod[];
  readonly months: readonly PlanPeriod[];
};

type FiscalNames = Pick<PlanSettings, 'fiscalFirstMonth' | 'fiscalLabel'>;

/** The periods of a plan, from as-of to the end of its last fiscal year. */
export function planPeriods(asOf: Day, settings: FiscalNames & Pick<PlanSettings, 'years'>): PlanPeriods {
  const years = fiscalYears(asOf, settings.fiscalFirstMonth, settings.years, settings.fiscalLabel);
  const months = planMonths(asOf, years[years.length - 1]!.to);
  return { years, quarters: quartersOf(months, settings), months };
}

/** The window in which a period's own failures are counted. */
export function ownWindow({ startMonth, endMonth }: PlanPeriod): CountWindow {
  return { from: startMonth, to: endMonth };
}

/** The window from as-of to a period's end. */
export function windowToDate({ endMonth }: PlanPeriod): CountWindow {
  return { from: 0, to: endMonth };
}

function quartersOf(months: readonly PlanPeriod[], settings: FiscalNames): PlanPeriod[] {
  const quarters = new Map<string, PlanPeriod>();
  for (const month of months) {
    const label = quarterLabel(month.from, settings);
    const begun = quarters.get(label) ?? { ...month, label };
    quarters.set(label, { ...begun, to: month.to, endMonth: month.endMonth });
  }
  return [...quarters.values()];
}

// Settings were checked before they came here, so a first month that is none is a programming mistake.
function quarterLabel(day: Day, { fiscalFirstMonth: firstMonth, fiscalLabel }: FiscalNames): string {
  const label = fiscalPeriod(day, firstMonth, 'quarter', fiscalLabel);
  if (!label.ok) throw new Error(`no first month: ${firstMonth}`);
  return label.value;
}
