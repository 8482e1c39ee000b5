import type { Day } from '../src/basics/calendar.ts';
import { dayFrom } from '../src/basics/calendar.ts';
import type { Outcome } from '../src/basics/outcome.ts';
import { andThen, answer, problem } from '../src/basics/outcome.ts';
import { constructionFrom } from '../src/electrochemistry/constructions.ts';
import type { Construction } from '../src/service/battery.ts';
import { rechargeBy as coreRechargeBy } from '../src/storage/rechargeBy.ts';
import { selfDischarge as coreSelfDischarge } from '../src/storage/selfDischarge.ts';
import { celsiusFrom, eachCell, isBlankOrZero, numberFrom } from './cell.ts';

/**
 * State of charge lost in storage, 0 to 1, from days and temperature.
 * @customfunction SELFDISCHARGE
 * @param {any[][]} days Days stored, disconnected, since the charge [d], 0 or more; cell or column
 * @param {any[][]} temperature Battery temperature over that time, -40 to 60 C; cell or column
 * @param {any[][]} [construction] "AGM" (default), "flooded", "gel" or a number (both lose as AGM); cell or column
 * @param {any} [unit] Unit of the temperature, "C" (default) or "F"
 * @returns {any[][]} State of charge lost, 0 to 1
 * @uncertainty A factor of 1.5 to 2 between makes and ages: 2 % a month at 25 C is common practice for AGM, another table says 3 % at 20 C. The flooded figures are for antimony plates in their first ten days.
 * @notfor A battery left connected in a vehicle, an old battery, a mean temperature of a store with hot weeks (work those out by themselves).
 * @example =CRANK.SELFDISCHARGE(91, 25, "AGM")
 */
export function selfDischarge(
  days: any[][],
  temperature: any[][],
  construction?: any[][],
  unit?: any,
): any[][] {
  const inputs = { columns: [days, temperature, construction], singles: [unit] };
  return eachCell(inputs, ([time, degrees, kind]) =>
    andThen(numberFrom(time, 'days'), (number) =>
      andThen(stored(degrees, kind, unit), ({ celsius, construction: known }) =>
        coreSelfDischarge(number, celsius, known),
      ),
    ),
  );
}

/**
 * Date by which a stored, disconnected battery is to be charged again, as a spreadsheet date.
 * @customfunction RECHARGEBY
 * @param {any[][]} chargedOn Date of the last FULL charge, a spreadsheet date or text such as 2026-03-15; cell or column
 * @param {any[][]} temperature Store temperature, -40 to 60 C; cell or column
 * @param {any[][]} [construction] "AGM" (default), "flooded", "gel" or a number (both lose as AGM); cell or column
 * @param {any} [unit] Unit of the temperature, "C" (default) or "F"
 * @param {any} [mostMonths] Longest time between full charges, whole months, 1 to 60; default 6, flooded 3
 * @returns {any[][]} Date: the earlier of charge down to 80 % and mostMonths after the full charge
 * @uncertainty As SELFDISCHARGE, so a warm store's date may be 50 % out; the rest voltage (80 % is 12.66 V AGM, 12.50 V flooded at 25 C) decides.
 * @notfor A battery left connected in a vehicle, or one that was put away less than full.
 * @example =CRANK.RECHARGEBY("2026-01-15", 40, "AGM")
 */
export function rechargeBy(
  chargedOn: any[][],
  temperature: any[][],
  construction?: any[][],
  unit?: any,
  mostMonths?: any,
): any[][] {
  const inputs = {
    columns: [chargedOn, temperature, construction],
    singles: [unit, mostMonths],
    blank: isBlankOrZero,
  };
  return eachCell(inputs, ([date, degrees, kind]) =>
    andThen(dayFrom(date, 'chargedOn'), (day) =>
      andThen(stored(degrees, kind, unit), (store) => dueDate(day, store, mostMonths)),
    ),
  );
}

type Store = { readonly celsius: number; readonly construction: Construction };

// How warm a store is decides the answer, so no temperature is taken for granted here.
function stored(temperature: unknown, construction: unknown, unit: unknown): Outcome<Store> {
  return andThen(celsiusFrom(temperature, unit), (celsius) => {
    if (celsius === undefined) return problem('missing', 'missing', 'temperature');
    return andThen(constructionFrom(construction), (kind) => answer({ celsius, construction: kind }));
  });
}

function dueDate(day: Day, { celsius, construction }: Store, mostMonths: unknown): Outcome<Day> {
  if (isBlankOrZero(mostMonths)) return coreRechargeBy(day, celsius, construction);
  return andThen(numberFrom(mostMonths, 'mostMonths'), (months) =>
    coreRechargeBy(day, celsius, construction, months),
  );
}
