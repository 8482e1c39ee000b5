import { dayFrom } from '../src/basics/calendar.ts';
import type { Outcome } from '../src/basics/outcome.ts';
import { andThen, answer, problem } from '../src/basics/outcome.ts';
import type { AgeBin } from '../src/planning/ageBins.ts';
import { collapsedBins } from '../src/planning/ageBins.ts';
import type { LifeBelief } from '../src/planning/lattice.ts';
import { isPosterior } from '../src/planning/lattice.ts';
import { orderBy as coreOrderBy } from '../src/planning/orderBy.ts';
import type { ForecastRow } from '../src/planning/replacementForecast.ts';
import {
  USUAL_LEVEL,
  USUAL_MONTHS_EACH,
  replacementForecast as coreReplacementForecast,
} from '../src/planning/replacementForecast.ts';
import { USUAL_STOCK_CHANCE, stockLevel as coreStockLevel } from '../src/planning/stockLevel.ts';
import type { Cell } from './cell.ts';
import { asBlock, eachCell, isBlank, isBlankOrZero, numberFrom, table } from './cell.ts';
import { lifeBelief } from './lifeBlock.ts';

/**
 * Expected replacements with low, high and variance by period, then all together, replacements that fail again included.
 * @customfunction REPLACEMENTFORECAST
 * @param {any[][]} ages Months in service of the batteries now in service, 0 or more; column
 * @param {any[][]} life Removal history in two or three columns (months, failed 1 or 0, ageAtRecordStart), or two cells Weibull shape and scale in months
 * @param {any} periods How many periods from now, whole, 1 to 120
 * @param {any} [monthsEach] Months in each period, default 12; all periods together up to 360
 * @param {any} [level] Chance that low and high hold, 0 to 1, default 0.9
 * @param {any[][]} [counts] Batteries behind each age, whole, 0 or more, default 1; column
 * @returns {any[][]} Table: period, expected, low, high, variance; last row all
 * @uncertainty With a removal history low and high hold the uncertainty of the life; with shape and scale they hold chance only and are too narrow for a budget: the heads say so. The low and high of periods never add up.
 * @notfor Ages that only come from survivors with no removals on record; fleets that will grow or shrink; stock that is not in service.
 * @example =CRANK.REPLACEMENTFORECAST({6;18;30;42;54}, {2.4,60}, 3, 12, 0.9, {40;35;30;20;10})
 */
export function replacementForecast(
  ages: any[][],
  life: any[][],
  periods: any,
  monthsEach?: any,
  level?: any,
  counts?: any[][],
): any[][] {
  if (asBlock(ages).flat().every(isBlank)) return [['']];
  return table([ages, life, periods, monthsEach, level, counts], () =>
    andThen(agesAndCounts(ages, counts), (bins) =>
      andThen(lifeBelief(life), (belief) =>
        andThen(
          numbers({ periods, monthsEach: or(monthsEach, USUAL_MONTHS_EACH), level: or(level, USUAL_LEVEL) }),
          (given) =>
            andThen(
              coreReplacementForecast(bins, belief, given.periods!, given.monthsEach, given.level),
              (rows) => answer([heads(belief), ...rows.map(tableRow)]),
            ),
        ),
      ),
    ),
  );
}

/**
 * Units to hold so that demand is met with the given chance, from its expected count and variance.
 * @customfunction STOCKLEVEL
 * @param {any[][]} expected Expected demand until the next delivery, units, 0 to 1,000,000; cell or column
 * @param {any} [chance] Chance that the stock is enough, above 0 and below 1, default 0.95
 * @param {any[][]} [variance] Variance of that demand, units squared, 0 to 1e10, default the expected count; cell or column
 * @returns {any[][]} Whole units
 * @uncertainty Exact for the law it assumes: Poisson, or negative binomial where the variance is above the expected count. Give the variance that REPLACEMENTFORECAST answers.
 * @notfor Demand that comes in lots (whole sets, a campaign), or adding up stock levels of several places.
 * @example =CRANK.STOCKLEVEL(7.3, 0.95, 20.6)
 */
export function stockLevel(expected: any[][], chance?: any, variance?: any[][]): any[][] {
  return eachCell({ columns: [expected, variance], singles: [chance] }, ([mean, spread]) =>
    andThen(numberFrom(mean, 'expected'), (demand) =>
      andThen(optional(chance, 'chance', USUAL_STOCK_CHANCE), (level) =>
        andThen(optional(spread, 'variance', demand), (varianceGiven) =>
          coreStockLevel(demand, level, varianceGiven),
        ),
      ),
    ),
  );
}

/**
 * Date by which to order what is needed on a date, as a spreadsheet date.
 * @customfunction ORDERBY
 * @param {any[][]} needed Date of need, a spreadsheet date or text such as 2027-03-15; cell or column
 * @param {any[][]} leadMonths Months from order to delivery, 0 to 120; cell or column
 * @param {any[][]} [safetyMonths] Margin before the need, months, 0 to 120, default 0; cell or column
 * @returns {any[][]} Date by which to order
 * @uncertainty None of its own; the lead time is an input. Part of a month counts 30.4375 days, rounded up.
 * @notfor Deciding how many to order: see REPLACEMENTFORECAST and STOCKLEVEL.
 * @example =CRANK.ORDERBY("2026-10-01", 4, 1)
 */
export function orderBy(needed: any[][], leadMonths: any[][], safetyMonths?: any[][]): any[][] {
  const inputs = { columns: [needed, leadMonths, safetyMonths], blank: isBlankOrZero };
  return eachCell(inputs, ([date, lead, safety]) =>
    andThen(dayFrom(date, 'needed'), (day) =>
      andThen(numberFrom(lead, 'leadMonths'), (leadTime) =>
        andThen(optional(safety, 'safetyMonths', 0), (margin) => coreOrderBy(day, leadTime, margin)),
      ),
    ),
  );
}

function heads(belief: LifeBelief): Cell[] {
  const limits = isPosterior(belief) ? ['low', 'high'] : ['low, chance only', 'high, chance only'];
  return ['period', 'expected', ...limits, 'variance'];
}

const tableRow = ({ period, expected, low, high, variance }: ForecastRow): Cell[] => [
  period,
  expected,
  low,
  high,
  variance,
];

// None of these can be 0, so a 0 is a left-out argument.
const or = (given: unknown, usual: number): unknown => (isBlankOrZero(given) ? usual : given);

const optional = (given: unknown, argument: string, usual: number): Outcome<number> =>
  numberFrom(or(given, usual), argument);

function numbers(given: Record<string, unknown>): Outcome<Record<string, number>> {
  const found: Record<string, number> = {};
  for (const [argument, value] of Object.entries(given)) {
    const number = numberFrom(value, argument);
    if (!number.ok) return number;
    found[argument] = number.value;
  }
  return answer(found);
}

// A row without an age is left out; its count goes with it.
function agesAndCounts(ages: unknown, counts: unknown): Outcome<AgeBin[]> {
  const given = asBlock(ages).flat();
  const behind = isBlank(counts) ? undefined : asBlock(counts).flat();
  if (behind !== undefined && behind.length !== given.length) return differentShapes(ages, counts);
  const bins: AgeBin[] = [];
  for (const [row, cell] of given.entries()) {
    if (isBlank(cell)) continue;
    const age = numberFrom(cell, 'ages');
    if (!age.ok) return age;
    const count = behind === undefined ? answer(1) : optional(behind[row], 'counts', 0);
    if (!count.ok) return count;
    bins.push({ age: age.value, count: count.value });
  }
  return answer(collapsedBins(bins));
}

function differentShapes(ages: unknown, counts: unknown) {
  const shape = (given: unknown) => `${asBlock(given).length} x ${asBlock(given)[0]?.length ?? 0}`;
  const more = { first: shape(ages), second: shape(counts) };
  return problem('badInput', 'shapesDiffer', 'the ranges', undefined, { more });
}
