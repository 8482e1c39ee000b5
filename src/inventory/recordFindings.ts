import { isoDay } from '../basics/calendar.ts';
import type { Whereabouts } from '../service/battery.ts';
import type { Dates } from './dateFindings.ts';
import type { Findings } from './findings.ts';
import type { RecordStart } from './inventory.ts';
import type { Lines } from './lines.ts';
import { recordStart } from './recordStart.ts';

/** The record start of a sheet; one that was assumed, and rows without a watched-since date beside others, are findings. */
export function recordStartOf(
  lines: Lines,
  dates: Dates,
  where: readonly Whereabouts[],
  said: string | undefined,
  findings: Findings,
): RecordStart {
  const [watched, removed] = [dates.watched.first, dates.removed.first];
  const start = recordStart({
    said,
    earliestWatched: earliest(watched),
    watchedShare: watched.filter((day) => !Number.isNaN(day)).length / Math.max(1, watched.length),
    earliestRemoval: earliest(removed),
    anyRemoved: where.includes('removed') || earliest(removed) !== undefined,
  });
  if (start.from === 'assumed') reportAssumed(lines, removed, start, findings);
  if (start.from === 'column') reportMissing(lines, watched, start, findings);
  return start;
}

function earliest(days: Float64Array): number | undefined {
  let first = Number.POSITIVE_INFINITY;
  for (const day of days) if (day < first) first = day;
  return first === Number.POSITIVE_INFINITY ? undefined : first;
}

function reportAssumed(lines: Lines, removed: Float64Array, { date }: RecordStart, findings: Findings): void {
  const line = removed.indexOf(earliest(removed)!);
  const given = `the earliest removal is ${isoDay(removed[line]!)}`;
  const done = `every removal is taken to be on record since ${isoDay(date!)}: an assumption; say since when it is so`;
  findings.add(lines.rows[line]!, {
    kind: 'record start assumed',
    column: lines.head('removed'),
    given,
    done,
    setting: 'recordsSince',
    subject: { about: 'records', day: isoDay(date!) },
  });
}

function reportMissing(lines: Lines, watched: Float64Array, { date }: RecordStart, findings: Findings): void {
  watched.forEach((day, line) => {
    if (!Number.isNaN(day)) return;
    const found = {
      kind: 'watched since missing',
      column: lines.head('watchedSince'),
      given: 'nothing',
    } as const;
    findings.add(lines.rows[line]!, {
      ...found,
      done: `taken as ${isoDay(date!)}, the earliest of the column`,
    });
  });
}
