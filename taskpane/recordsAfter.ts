import type { Day } from '../src/basics/calendar.ts';
import { dayFrom, isoDay } from '../src/basics/calendar.ts';
import type { Outcome } from '../src/basics/outcome.ts';
import { problem } from '../src/basics/outcome.ts';
import type { Settings } from '../src/inventory/settings.ts';

/** Refuses records that begin after as-of: they would leave nothing on record, without a word. */
export function recordsAfter(since: Settings['recordsSince'], asOf: Day): Outcome<never> | undefined {
  const day = since === undefined ? undefined : dayFrom(since, 'recordsSince');
  if (day?.ok !== true || day.value <= asOf) return undefined;
  return problem('outOfRange', 'recordsAfterAsOf', 'recordsSince', since, { more: { asOf: isoDay(asOf) } });
}
