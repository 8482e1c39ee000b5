import type { Day } from '../basics/calendar.ts';
import { isoDay } from '../basics/calendar.ts';
import { DAYS_PER_MONTH } from '../basics/units.ts';
import type { Retest } from '../cranking/batteryTest.ts';
import { damageFrom, retestFrom } from '../cranking/batteryTest.ts';
import { verdict } from '../cranking/verdict.ts';
import type { Construction, Whereabouts } from '../service/battery.ts';
import { shownCell } from './cells.ts';
import type { Dates } from './dateFindings.ts';
import type { Findings } from './findings.ts';
import type { Lines } from './lines.ts';
import type { Chain } from './oneBattery.ts';
import type { Records } from './testRecords.ts';
import { batteryTestOf } from './voltFindings.ts';

/** The readings of a battery that count at as-of, before they are checked; what is not known is left out. */
export type RawReadings = {
  /** Where they stand: the row, and the findings of its sheet. */
  readonly row: number;
  readonly findings: Findings;
  readonly lines: Lines;
  readonly testedOn?: Day;
  readonly chargedOn?: Day;
  readonly restVolts?: number;
  readonly celsius?: number;
  readonly reading?: number;
  readonly loadVolts?: number;
  readonly least?: number;
  readonly rating?: number;
  readonly retest: Retest;
  readonly damaged: boolean;
};

/** What readings are looked for in. */
export type ReadingsJob = {
  readonly lines: Lines;
  readonly dates: Dates;
  readonly where: readonly Whereabouts[];
  readonly tests: Records | undefined;
  readonly charges: Records | undefined;
  readonly asOf: Day;
  readonly testMonths: number;
  readonly findings: Findings;
};

const known = (value: number): number | undefined => (Number.isNaN(value) ? undefined : value);

/**
 * The readings of a battery that count: its latest test in the Tests sheet within `testMonths`, else the columns
 * of its own row. Whether it is a retest follows from the order of dates: failing test, later charge, later reading.
 */
export function latestReadings(chain: Chain, construction: Construction, job: ReadingsJob): RawReadings {
  const line = chain.at(-1)!;
  const own = ownReadings(line, job);
  const serial = job.lines.text('serial')[line]!;
  const chargedOn = chargedOnOf(serial, own, line, job);
  const tests = countingTests(serial, job, job.where[line] !== 'removed');
  const read = tests.length === 0 ? own : fromTests(tests, own, construction, serial, job);
  reportSameDay(read, chargedOn);
  return chargedOn === undefined ? read : { ...read, chargedOn };
}

function ownReadings(
  line: number,
  { lines, dates, where, asOf, testMonths, findings }: ReadingsJob,
): RawReadings {
  const testedOn = known(dates.testedOn.first[line]!);
  const base: RawReadings = {
    row: lines.rows[line]!,
    findings,
    lines,
    rating: known(lines.number('rating')[line]!),
    chargedOn: known(dates.chargedOn.first[line]!),
    retest: 0,
    damaged: damageFrom(lines.text('damage')[line]!),
  };
  if (testedOn !== undefined && isTooOld(testedOn, asOf, testMonths)) {
    if (hasValues(lines, line) && where[line] !== 'removed') reportOld(lines, line, testedOn, findings);
    return base;
  }
  const { restVolts, celsius, reading, loadVolts, least } = valuesAt(lines, line);
  const retest = retestAt(lines, line, findings);
  return { ...base, restVolts, celsius, reading, loadVolts, least, retest, testedOn };
}

/** Whether a test was so long ago that it does not count. */
export const isTooOld = (day: Day, asOf: Day, months: number): boolean =>
  asOf - day > months * DAYS_PER_MONTH + 1;

const hasValues = (lines: Lines, line: number): boolean =>
  (['restVolts', 'reading', 'loadVolts'] as const).some((field) => !Number.isNaN(lines.number(field)[line]!));

function reportOld(lines: Lines, line: number, testedOn: Day, findings: Findings): void {
  const column = lines.head('testedOn');
  findings.add(lines.rows[line]!, { kind: 'test too old to count', column, given: isoDay(testedOn) });
}

function valuesAt(lines: Lines, line: number) {
  return {
    restVolts: known(lines.number('restVolts')[line]!),
    celsius: known(lines.number('temperature')[line]!),
    reading: known(lines.number('reading')[line]!),
    loadVolts: known(lines.number('loadVolts')[line]!),
    least: known(lines.number('least')[line]!),
  };
}

function retestAt(lines: Lines, line: number, findings: Findings): Retest {
  const text = lines.text('retest')[line]!;
  if (text === '') return 0;
  const retest = retestFrom(text);
  if (retest.ok) return retest.value;
  findings.add(lines.rows[line]!, {
    kind: 'retest not understood',
    column: lines.head('retest'),
    given: text,
  });
  return 0;
}

function chargedOnOf(serial: string, own: RawReadings, line: number, job: ReadingsJob): Day | undefined {
  const charges = job.charges?.of.get(serial) ?? [];
  if (serial === '' || charges.length === 0) return own.chargedOn;
  const day = Math.floor(job.charges!.at[charges.at(-1)!]!);
  if (own.chargedOn !== undefined && own.chargedOn > day) {
    const [column, said] = [job.lines.head('chargedOn'), `${isoDay(own.chargedOn)}; Charges: ${isoDay(day)}`];
    job.findings.add(job.lines.rows[line]!, {
      kind: 'charge date differs from the Charges sheet',
      column,
      given: said,
    });
  }
  return day;
}

function countingTests(
  serial: string,
  { tests, asOf, testMonths }: ReadingsJob,
  isAsked: boolean,
): readonly number[] {
  const all = serial === '' ? [] : (tests?.of.get(serial) ?? []);
  const counting = all.filter((test) => !isTooOld(Math.floor(tests!.at[test]!), asOf, testMonths));
  if (isAsked && all.length > 0 && counting.length === 0)
    reportOld(tests!.lines, all.at(-1)!, Math.floor(tests!.at[all.at(-1)!]!), tests!.findings);
  return counting;
}

function fromTests(
  counting: readonly number[],
  own: RawReadings,
  construction: Construction,
  serial: string,
  job: ReadingsJob,
): RawReadings {
  const tests = job.tests!;
  const last = counting.at(-1)!;
  const retest = retestByDates(counting, own, construction, job.charges?.of.get(serial) ?? [], job);
  const read = readingsOf(last, own, retest, tests);
  reportRetest(last, retest, tests);
  reportConflict(read, own, job);
  return read;
}

/** The readings of one line of the Tests sheet; the battery's own row fills in for a least that it lacks. */
export function readingsOf(
  test: number,
  own: RawReadings,
  retest: Retest,
  { lines, findings, at }: Records,
): RawReadings {
  const damaged = damageFrom(lines.text('damage')[test]!) || own.damaged;
  const values = valuesAt(lines, test);
  const least = values.least ?? own.least;
  const testedOn = Math.floor(at[test]!);
  const row = lines.rows[test]!;
  return { row, findings, lines, ...values, least, rating: own.rating, retest, damaged, testedOn };
}

// Each test is judged in its turn: one that awaits charge and is followed by a charge makes the next a retest.
function retestByDates(
  counting: readonly number[],
  own: RawReadings,
  construction: Construction,
  charges: readonly number[],
  job: ReadingsJob,
): Retest {
  const tests = job.tests!;
  let retest: Retest = 0;
  let failedAt: number | undefined;
  for (const [index, test] of counting.entries()) {
    const at = tests.at[test]!;
    if (
      failedAt !== undefined &&
      charges.some((charge) => isBetween(job.charges!.at[charge]!, failedAt!, at))
    ) {
      retest = retest === 0 ? 1 : 2;
      failedAt = undefined;
    }
    if (index === counting.length - 1) break;
    const judged = verdict(batteryTestOf(readingsOf(test, own, retest, tests), construction, true));
    if (!judged.ok || judged.value === 'Not judged') continue;
    if (judged.value === 'Serviceable') [retest, failedAt] = [0, undefined];
    else failedAt = at;
  }
  return retest;
}

// Later means a later day, unless both tell the time of day.
function isBetween(charge: number, failed: number, test: number): boolean {
  return isLater(charge, failed) && isLater(test, charge);
}

function isLater(one: number, other: number): boolean {
  if (Math.floor(one) !== Math.floor(other)) return one > other;
  return one % 1 !== 0 && other % 1 !== 0 && one > other;
}

function reportRetest(test: number, retest: Retest, { lines, findings }: Records): void {
  const text = lines.text('retest')[test]!;
  const said = text === '' ? undefined : retestFrom(text);
  if (said === undefined || (said.ok && said.value === retest)) return;
  const kind = said.ok ? 'retest not in the order of dates' : 'retest not understood';
  const done = `by the order of dates: ${['first test', 'first retest', 'second retest'][retest]}`;
  findings.add(lines.rows[test]!, { kind, column: lines.head('retest'), given: text, done });
}

function reportConflict(read: RawReadings, own: RawReadings, { findings }: ReadingsJob): void {
  if (own.testedOn === undefined || own.testedOn < read.testedOn!) return;
  const differs = (['restVolts', 'reading', 'loadVolts'] as const).find(
    (field) => own[field] !== undefined && own[field] !== read[field],
  );
  if (differs === undefined) return;
  const said = `${own.lines.head(differs)} ${own[differs]} on ${isoDay(own.testedOn)}`;
  const given = `${said}; Tests: ${read[differs] ?? 'nothing'} on ${isoDay(read.testedOn!)}`;
  findings.add(own.row, {
    kind: 'reading differs from the Tests sheet',
    column: own.lines.head(differs),
    given,
  });
}

function reportSameDay(read: RawReadings, chargedOn: Day | undefined): void {
  if (read.testedOn === undefined || read.testedOn !== chargedOn) return;
  const column = read.lines.head('testedOn');
  read.findings.add(read.row, {
    kind: 'charged and tested the same day',
    column,
    given: shownCell(isoDay(chargedOn)),
  });
}
