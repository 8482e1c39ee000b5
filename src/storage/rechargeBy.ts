import type { Day } from '../basics/calendar.ts';
import { addMonths } from '../basics/calendar.ts';
import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer, problem } from '../basics/outcome.ts';
import type { Construction } from '../service/battery.ts';
import { chargeLostPerDay } from './selfDischarge.ts';

/** A stored battery is charged again when this share is gone: at 80 % charge, published. */
const MOST_LOST = 0.2;

/** Longest time between full charges [months]: AGM published as 6 to 8; flooded between a month and 4. */
const MOST_MONTHS = 6;
const MOST_MONTHS_FLOODED = 3;
const MOST_MONTHS_LIMITS = [1, 60] as const;

/**
 * Date by which a stored, disconnected battery is to be charged again, from the date of its last FULL charge and the
 * store's temperature: the earlier of its charge coming down to 80 % (selfDischarge) and a most of months.
 * @param chargedOn date of the last full charge [day]
 * @param celsius store temperature [C], -40 to 60
 * @param construction AGM, flooded, gel, or own full rest voltage at 25 C [V], 12.0 to 13.5; default AGM
 * @param mostMonths longest time between full charges [months], whole, 1 to 60; default 6, flooded 3
 * @returns date, rounded down to a whole day [day]
 * @problem badInput    when the temperature is no number or the months are no whole number
 * @problem outOfRange  when the temperature is outside -40 to 60 C, the months outside 1 to 60, or a number for the
 * construction outside 12.0 to 13.5 V
 * @source tm9-6140-200-14 flooded: charge every 4 months at most, look every 30 days
 * @example rechargeBy(46023, 40, 'AGM') // 46130
 */
export function rechargeBy(
  chargedOn: Day,
  celsius: number,
  construction: Construction = 'AGM',
  mostMonths: number = construction === 'flooded' ? MOST_MONTHS_FLOODED : MOST_MONTHS,
): Outcome<Day> {
  return andThen(wholeMonths(mostMonths), (months) =>
    andThen(chargeLostPerDay(celsius, construction), (perDay) =>
      answer(Math.min(chargedOn + Math.floor(MOST_LOST / perDay), monthsLater(chargedOn, months))),
    ),
  );
}

function wholeMonths(months: number): Outcome<number> {
  if (!Number.isInteger(months)) return problem('badInput', 'notWholeMonths', 'mostMonths', months);
  const [least, most] = MOST_MONTHS_LIMITS;
  if (months >= least && months <= most) return answer(months);
  return problem('outOfRange', 'outOfLimits', 'mostMonths', months, { limits: [least, most] });
}

// A store has few distinct days of charge however many rows: each is carried forward once.
const laterSeen = new Map<number, Day>();
const MOST_LATER_KEPT = 20_000;

function monthsLater(day: Day, months: number): Day {
  const key = day * 100 + months;
  const known = laterSeen.get(key);
  if (known !== undefined) return known;
  if (laterSeen.size >= MOST_LATER_KEPT) laterSeen.clear();
  const later = addMonths(day, months);
  laterSeen.set(key, later);
  return later;
}
