import type { Day } from '../basics/calendar.ts';
import { isoDay } from '../basics/calendar.ts';
import { cellText, isBlank, isPlaceholder } from './cells.ts';
import type { Field } from './fields.ts';
import type { Findings } from './findings.ts';
import type { DateColumn, Lines } from './lines.ts';
import type { MadeColumn } from './readCodes.ts';

/** The dates of the rows after they were held against as-of and against one another; NaN = not known. */
export type Dates = {
  readonly made: DateColumn;
  readonly installed: DateColumn;
  readonly removed: DateColumn;
  readonly watched: DateColumn;
  readonly testedOn: DateColumn;
  readonly chargedOn: DateColumn;
  /** 1 where the made date stands for the installation. */
  readonly fromMade: Uint8Array;
  /** 1 where the dates contradict one another: no life can be told from the row. */
  readonly broken: Uint8Array;
  /** 1 where a removal after as-of counts as still in service. */
  readonly removedLater: Uint8Array;
};

const EVENTS: readonly Field[] = ['installed', 'removed', 'watchedSince', 'testedOn', 'chargedOn'];

/** As-of is old, and not the dates wrong, from this many rows and this share of the dated rows on (own judgement). */
const ROWS_LATER = 3;
const SHARE_LATER = 0.05;

const copy = ({ first, last }: DateColumn): DateColumn => ({
  first: Float64Array.from(first),
  last: Float64Array.from(last),
});

/** The dates of the rows held against as-of and against one another; each contradiction is a finding. */
export function checkedDates(lines: Lines, made: MadeColumn, asOf: Day, findings: Findings): Dates {
  const dates: Dates = {
    made: copy(made),
    installed: copy(lines.date('installed')),
    removed: copy(lines.date('removed')),
    watched: copy(lines.date('watchedSince')),
    testedOn: copy(lines.date('testedOn')),
    chargedOn: copy(lines.date('chargedOn')),
    fromMade: new Uint8Array(lines.count),
    broken: new Uint8Array(lines.count),
    removedLater: new Uint8Array(lines.count),
  };
  takeOutLater(lines, dates, asOf, findings);
  for (let line = 0; line < lines.count; line += 1) {
    checkMade(lines, dates, line, findings);
    checkRemoved(lines, dates, line, findings);
  }
  return dates;
}

const columnOf = (dates: Dates, field: Field): DateColumn =>
  field === 'watchedSince' ? dates.watched : dates[field as 'installed'];

function takeOutLater(lines: Lines, dates: Dates, asOf: Day, findings: Findings): void {
  const later: { line: number; field: Field; day: Day }[] = [];
  for (const field of EVENTS) {
    if (!lines.at.has(field)) continue;
    const { first, last } = columnOf(dates, field);
    for (let line = 0; line < lines.count; line += 1) {
      if (!(first[line]! > asOf)) {
        if (last[line]! > asOf) last[line] = asOf;
        continue;
      }
      later.push({ line, field, day: first[line]! });
      if (field === 'removed') dates.removedLater[line] = 1;
      first[line] = last[line] = Number.NaN;
    }
  }
  reportLater(lines, later, asOf, findings);
}

function reportLater(
  lines: Lines,
  later: readonly { line: number; field: Field; day: Day }[],
  asOf: Day,
  findings: Findings,
): void {
  const rows = new Set(later.map(({ line }) => line)).size;
  if (rows >= ROWS_LATER && rows >= SHARE_LATER * lines.count) {
    const latest = later.reduce((most, one) => (one.day > most.day ? one : most));
    const given = `as-of is ${isoDay(asOf)}; ${rows} rows have later dates, the latest is ${isoDay(latest.day)}`;
    const [column, count] = [lines.head(latest.field), rows];
    findings.add(lines.rows[latest.line]!, { kind: 'as-of older than the sheet', column, given, count });
    return;
  }
  for (const { line, field, day } of later) {
    const done = field === 'removed' ? 'counts as still in service at as-of' : 'not used';
    const given = isoDay(day);
    findings.add(lines.rows[line]!, {
      kind: 'date later than as-of',
      column: lines.head(field),
      given,
      done,
    });
  }
}

function checkMade(lines: Lines, { made, installed }: Dates, line: number, findings: Findings): void {
  const [from, fitted] = [made.first[line]!, installed.last[line]!];
  if (Number.isNaN(from) || Number.isNaN(fitted)) return;
  const given = `made ${isoDay(from)}, installed ${isoDay(installed.first[line]!)}`;
  const column = lines.head('installed');
  if (fitted < from) {
    findings.add(lines.rows[line]!, { kind: 'installed before made', column, given });
    made.first[line] = made.last[line] = Number.NaN;
  }
}

function checkRemoved(lines: Lines, dates: Dates, line: number, findings: Findings): void {
  const { installed, removed, watched } = dates;
  const [out, since] = [removed.last[line]!, installed.first[line]!];
  if (out < since) {
    const given = `installed ${isoDay(since)}, removed ${isoDay(removed.first[line]!)}`;
    findings.add(lines.rows[line]!, {
      kind: 'removed before installed',
      column: lines.head('removed'),
      given,
    });
    dates.broken[line] = 1;
  } else if (out === since && removed.first[line] === out && installed.last[line] === since) {
    const given = `installed and removed ${isoDay(out)}`;
    findings.add(lines.rows[line]!, {
      kind: 'removed on the day installed',
      column: lines.head('removed'),
      given,
    });
  }
  if (watched.first[line]! > out) {
    const given = `watched since ${isoDay(watched.first[line]!)}, removed ${isoDay(removed.first[line]!)}`;
    findings.add(lines.rows[line]!, {
      kind: 'watched since after removal',
      column: lines.head('watchedSince'),
      given,
    });
    dates.broken[line] = 1;
  }
}

/** Whether the row has something in a field's cell that is neither filler nor a no, readable or not. */
export function saysSomething(lines: Lines, line: number, field: Field): boolean {
  const cell = lines.cell(line, field);
  return !isBlank(cell) && !isPlaceholder(cell) && !/^(n|no|false)$/i.test(cellText(cell));
}
