import { dayFrom } from '../src/basics/calendar.ts';
import type { Outcome } from '../src/basics/outcome.ts';
import { andThen, answer, problem } from '../src/basics/outcome.ts';
import type { FiscalLength } from '../src/service/fiscalPeriod.ts';
import { fiscalPeriod as coreFiscalPeriod } from '../src/service/fiscalPeriod.ts';
import { monthsInService as coreMonthsInService } from '../src/service/monthsInService.ts';
import { monthsOnShelf as coreMonthsOnShelf } from '../src/service/monthsOnShelf.ts';
import { eachCell, isBlank, isBlankOrZero, numberFrom } from './cell.ts';

/**
 * Months in service, 0 or more: whole months from installation to removal or as-of, plus the share of the running month, less months out.
 * @customfunction MONTHSINSERVICE
 * @param {any[][]} installed Date of the first installation, spreadsheet date or text 2026-03-15; cell or column
 * @param {any[][]} until Date of removal, or as-of for a battery still in; cell or column
 * @param {any[][]} [monthsOut] Months spent out of the vehicle between installations, 0 or more, default 0; cell or column
 * @returns {any[][]} Months, one for each cell
 * @uncertainty Exact to the day of the dates given.
 * @notfor Life statistics, which count days / 30.4375.
 * @example =CRANK.MONTHSINSERVICE("2024-01-31", "2026-06-30")
 */
export function monthsInService(installed: any[][], until: any[][], monthsOut?: any[][]): any[][] {
  return eachCell({ columns: [installed, until, monthsOut], blank: isBlankOrZero }, ([from, to, out]) =>
    andThen(dayFrom(from, 'installed'), (first) =>
      andThen(dateOrMissing(to, 'until'), (last) =>
        andThen(isBlank(out) ? answer(0) : numberFrom(out, 'monthsOut'), (months) =>
          coreMonthsInService(first, last, months),
        ),
      ),
    ),
  );
}

/**
 * Months on the shelf, 0 or more: from manufacture to installation, or to as-of for stock.
 * @customfunction MONTHSONSHELF
 * @param {any[][]} made Date of manufacture, spreadsheet date or text 2026-03-15; cell or column
 * @param {any[][]} until Date of installation, or as-of for stock; cell or column
 * @returns {any[][]} Months, one for each cell
 * @uncertainty A date made from a code is the first day of its month or week: up to a month too long.
 * @notfor Batteries that were in a vehicle before: the shelf time between is monthsOut of MONTHSINSERVICE.
 * @example =CRANK.MONTHSONSHELF("2025-11-01", "2026-06-30")
 */
export function monthsOnShelf(made: any[][], until: any[][]): any[][] {
  return eachCell({ columns: [made, until], blank: isBlankOrZero }, ([from, to]) =>
    andThen(dayFrom(from, 'made'), (first) =>
      andThen(dateOrMissing(to, 'until'), (last) => coreMonthsOnShelf(first, last)),
    ),
  );
}

/**
 * Fiscal period of a date as text: FY2027, FY2027 Q2 or FY2027 M05; a fiscal year is named by the year in which it ends.
 * @customfunction FISCALPERIOD
 * @param {any[][]} date Date, spreadsheet date or text 2026-03-15; cell or column
 * @param {any} [firstMonth] First month of the fiscal year, 1 to 12, default 1
 * @param {any} [by] "year" (default), "quarter" or "month"
 * @returns {any[][]} Name of the period, one for each cell
 * @uncertainty None: it is a calendar rule.
 * @notfor Fiscal years that don't begin on the first of a month, or that are named by the year in which they begin.
 * @example =CRANK.FISCALPERIOD("2026-10-01", 10, "quarter")
 */
export function fiscalPeriod(date: any[][], firstMonth?: any, by?: any): any[][] {
  return eachCell({ columns: [date], singles: [firstMonth, by], blank: isBlankOrZero }, ([cell]) =>
    andThen(dayFrom(cell, 'date'), (day) =>
      andThen(isBlankOrZero(firstMonth) ? answer(1) : numberFrom(firstMonth, 'firstMonth'), (month) =>
        andThen(lengthFrom(by), (length) => coreFiscalPeriod(day, month, length)),
      ),
    ),
  );
}

function dateOrMissing(cell: unknown, argument: string): Outcome<number> {
  return isBlankOrZero(cell) ? problem('missing', 'missing', argument) : dayFrom(cell, argument);
}

function lengthFrom(given: unknown): Outcome<FiscalLength> {
  if (isBlankOrZero(given)) return answer<FiscalLength>('year');
  const word = String(given).trim().toLowerCase();
  if (word === 'year' || word === 'quarter' || word === 'month') return answer<FiscalLength>(word);
  return problem('badInput', 'notAWord', 'by', given, { more: { allowed: '"year", "quarter" or "month"' } });
}
