import { isoDay } from '../basics/calendar.ts';
import type { Battery, Whereabouts } from '../service/battery.ts';
import { DAYS_PER_MONTH } from '../basics/units.ts';
import { shownCell } from './cells.ts';
import type { Dates } from './dateFindings.ts';
import type { Findings } from './findings.ts';
import type { Lines } from './lines.ts';
import type { Chain } from './oneBattery.ts';

type FillJob = {
  readonly lines: Lines;
  readonly dates: Dates;
  readonly where: readonly Whereabouts[];
  readonly findings: Findings;
};

/**
 * Puts a date where an installation is not known, for batteries that are or were in service, those still in and those
 * gone alike: for the first installation the made date (time on the shelf then counts as service), for a later one the
 * day of the removal before it.
 */
export function fillInstalled(chains: readonly Chain[], job: FillJob): void {
  const { installed, removed } = job.dates;
  for (const chain of chains) {
    chain.forEach((line, index) => {
      if (!Number.isNaN(installed.first[line]!)) return;
      if (job.where[line] === 'inStock' && Number.isNaN(removed.first[line]!)) return;
      if (index === 0) fromMade(line, job);
      else fromRemoval(line, chain[index - 1]!, job);
    });
  }
}

function fromMade(line: number, { lines, dates, findings }: FillJob): void {
  const { installed, made, removed } = dates;
  const [first, last] = [made.first[line]!, made.last[line]!];
  if (Number.isNaN(first) || removed.first[line]! < first) return;
  installed.first[line] = first;
  installed.last[line] = removed.last[line]! < last ? removed.last[line]! : last;
  dates.fromMade[line] = 1;
  findings.add(lines.rows[line]!, {
    kind: 'made date used for installed',
    column: lines.head('installed') || lines.head('code') || lines.head('made'),
    given: shownCell(lines.cell(line, 'installed')) || 'no installation date',
    done: `taken as installed ${isoDay(first)}, when it was made; time on the shelf counts as service`,
  });
}

function fromRemoval(line: number, before: number, { lines, dates, findings }: FillJob): void {
  const { installed, removed } = dates;
  const out = removed.first[before]!;
  if (Number.isNaN(out) || removed.first[line]! < out) return;
  installed.first[line] = installed.last[line] = out;
  findings.add(lines.rows[line]!, {
    kind: 'later installation unknown',
    column: lines.head('installed'),
    given: shownCell(lines.cell(line, 'installed')) || 'no installation date',
    done: `taken as installed ${isoDay(out)}, when it was removed in row ${lines.rows[before]!}`,
  });
}

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
const OLD_ON_SHELF_MONTHS = 12;
const MOVED_MONTHS = 24;

/** In service longer than this a date is rather wrong than a battery so good (own judgement) [months]. */
const OLDEST_IN_SERVICE_MONTHS = 144;

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
