import { isoDay } from '../basics/calendar.ts';
import type { Battery, Whereabouts } from '../service/battery.ts';
import { DAYS_PER_MONTH } from '../basics/units.ts';
import { shownCell } from './cells.ts';
import type { Dates } from './dateFindings.ts';
import type { Findings } from './findings.ts';
import type { Lines } from './lines.ts';

/**
 * Puts the made date where the installation is not known, for batteries that are or were in service: their time on
 * the shelf then counts as service, for those still in and those gone alike.
 */
export function fillFromMade(
  lines: Lines,
  dates: Dates,
  where: readonly Whereabouts[],
  findings: Findings,
): void {
  const { installed, made, removed, fromMade } = dates;
  for (let line = 0; line < lines.count; line += 1) {
    if (!Number.isNaN(installed.first[line]!) || Number.isNaN(made.first[line]!)) continue;
    if (where[line] === 'inStock' && Number.isNaN(removed.first[line]!)) continue;
    if (removed.first[line]! < made.first[line]!) continue;
    installed.first[line] = made.first[line]!;
    installed.last[line] = Math.min(made.last[line]!, ...lastPossible(removed.last[line]!));
    fromMade[line] = 1;
    findings.add(lines.rows[line]!, {
      kind: 'made date used for installed',
      column: lines.head('installed') || lines.head('code') || lines.head('made'),
      given: shownCell(lines.cell(line, 'installed')) || 'no installation date',
      done: `taken as installed ${isoDay(made.first[line]!)}, when it was made; time on the shelf counts as service`,
    });
  }
}

const lastPossible = (removed: number): readonly number[] => (Number.isNaN(removed) ? [] : [removed]);

/** Reports a battery whose age can't be told. */
export function reportAgeUnknown(battery: Battery, lines: Lines, findings: Findings): void {
  const kind = battery.whereabouts === 'inService' ? 'age unknown' : 'removed, age unknown';
  const column = lines.head('installed') || lines.head('code');
  findings.add(battery.row, {
    kind,
    column,
    given: battery.serial === '' ? `row ${battery.row}` : battery.serial,
  });
}

/** Months from made to fitted from which a battery is old before it works, and from which it was rather moved (own judgement). */
export const OLD_ON_SHELF_MONTHS = 12;
export const MOVED_MONTHS = 24;

/** In service longer than this a date is rather wrong than a battery so good (own judgement) [months]. */
export const OLDEST_IN_SERVICE_MONTHS = 144;

/** Reports a battery that was long on a shelf before its first installation, or is in service longer than they last. */
export function checkAges(battery: Battery, lines: Lines, findings: Findings): void {
  const { made, installed, ageMonths = 0, whereabouts, row } = battery;
  const column = lines.head('installed') || lines.head('code');
  if (whereabouts === 'inService' && ageMonths > OLDEST_IN_SERVICE_MONTHS) {
    const given = `in service since ${isoDay(installed!)}: ${(ageMonths / 12).toFixed(0)} years`;
    findings.add(row, { kind: 'in service over 12 years', column, given });
  }
  if (made === undefined || installed === undefined) return;
  const onShelf = (installed - made) / DAYS_PER_MONTH;
  if (onShelf <= OLD_ON_SHELF_MONTHS) return;
  const given = `made ${isoDay(made)}, installed ${isoDay(installed)}: ${onShelf.toFixed(0)} months`;
  findings.add(row, {
    kind: onShelf > MOVED_MONTHS ? 'long on the shelf or moved' : 'old before it was fitted',
    column,
    given,
  });
}
