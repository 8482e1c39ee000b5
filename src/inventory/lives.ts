import type { Day } from '../basics/calendar.ts';
import { isoDay } from '../basics/calendar.ts';
import { DAYS_PER_MONTH } from '../basics/units.ts';
import type { Life, RemovalMeaning, Whereabouts } from '../service/battery.ts';
import type { Dates } from './dateFindings.ts';
import type { Findings } from './findings.ts';
import type { RecordStart } from './inventory.ts';
import type { Lines } from './lines.ts';
import type { Chain } from './oneBattery.ts';

/** What lives are told from. */
export type LifeJob = {
  readonly lines: Lines;
  readonly dates: Dates;
  readonly where: readonly Whereabouts[];
  readonly start: RecordStart;
  readonly asOf: Day;
  readonly findings: Findings;
  readonly lots: readonly string[];
  readonly sites: readonly string[];
  readonly meaningOf: (line: number) => RemovalMeaning;
};

/** First installation (first and last day it can mean) and the months spent on a shelf between installations. */
export type Service = { readonly first: Day; readonly last: Day; readonly monthsOut: number };

/** When a battery's service began and how long it was out; undefined where its age can't be told. */
export function serviceOf(chain: Chain, { dates }: Pick<LifeJob, 'dates'>): Service | undefined {
  const { installed, broken } = dates;
  if (chain.some((line) => Number.isNaN(installed.first[line]!) || broken[line] === 1)) return undefined;
  return {
    first: installed.first[chain[0]!]!,
    last: installed.last[chain[0]!]!,
    monthsOut: outBefore(chain, dates, Number.POSITIVE_INFINITY),
  };
}

// Months out of a vehicle between the installations of a chain, as far as they lie before a day.
function outBefore(chain: Chain, { installed, removed }: Dates, day: Day): number {
  let days = 0;
  for (let index = 1; index < chain.length; index += 1) {
    const out = removed.first[chain[index - 1]!]!;
    const back = Math.min(installed.first[chain[index]!]!, day);
    if (back > out) days += back - out;
  }
  return days / DAYS_PER_MONTH;
}

/** Age in service on a day [months of 30.4375 days]. */
export function ageOn(day: Day, { first, monthsOut }: Service): number {
  return Math.max(0, (day - first) / DAYS_PER_MONTH - monthsOut);
}

/**
 * The life of a battery as the records show it, or undefined where they show none: no age, or over before the
 * records began. A date known to the month gives an interval of ages.
 */
export function lifeOf(chain: Chain, service: Service, job: LifeJob): Life | undefined {
  const { dates, start } = job;
  const last = chain.at(-1)!;
  const ended = job.where[last] !== 'inService';
  const out = dates.removed.first[last]!;
  if (job.where[last] === 'inStock' && Number.isNaN(out)) return undefined;
  const said = watchedOf(chain, dates);
  const records = said ?? (start.from === 'never' ? undefined : start.date);
  if (records === undefined) return ended ? undefined : survivor(chain, service, job);
  const watchedFrom = Math.max(service.first, records);
  if (ended && (Number.isNaN(out) ? job.asOf : dates.removed.last[last]!) < watchedFrom) {
    reportBefore(last, watchedFrom, job);
    return undefined;
  }
  const entry = Math.max(
    0,
    (watchedFrom - service.first) / DAYS_PER_MONTH - outBefore(chain, dates, watchedFrom),
  );
  return ended
    ? endedLife(chain, service, watchedFrom, entry, job)
    : runningLife(chain, service, watchedFrom, entry, job);
}

function watchedOf(chain: Chain, { watched }: Dates): Day | undefined {
  const days = chain.map((line) => watched.first[line]!).filter((day) => !Number.isNaN(day));
  return days.length === 0 ? undefined : Math.min(...days);
}

type Span = Pick<Life, 'watchedFrom' | 'removed' | 'meaning' | 'entry' | 'from' | 'to'>;

function newLife(chain: Chain, service: Service, { lines, lots, sites }: LifeJob, span: Span): Life {
  const last = chain.at(-1)!;
  return {
    row: lines.rows[last]!,
    serial: lines.text('serial')[last]!,
    type: lines.text('type')[last]!,
    site: sites[last]!,
    maker: lines.text('maker')[last]!,
    lot: lots[last]!,
    vehicle: lines.text('vehicle')[last]!,
    installed: service.first,
    watchedFrom: span.watchedFrom,
    removed: span.removed,
    meaning: span.meaning,
    entry: span.entry,
    from: span.from,
    to: span.to,
  };
}

// Only what is still here is known: it enters at today's age and carries no weight.
function survivor(chain: Chain, service: Service, job: LifeJob): Life {
  const age = ageOn(job.asOf, service);
  return newLife(chain, service, job, { watchedFrom: job.asOf, entry: age, from: age, to: age });
}

function runningLife(chain: Chain, service: Service, watchedFrom: Day, entry: number, job: LifeJob): Life {
  const age = Math.max(entry, ageOn(job.asOf, service));
  return newLife(chain, service, job, { watchedFrom, entry, from: age, to: age });
}

/** A failure on the day of installation counts as one of up to a day. */
const ONE_DAY = 1 / DAYS_PER_MONTH;

function endedLife(
  chain: Chain,
  service: Service,
  watchedFrom: Day,
  entry: number,
  job: LifeJob,
): Life | undefined {
  const last = chain.at(-1)!;
  const meaning = job.meaningOf(last);
  const [out, outLast] = [job.dates.removed.first[last]!, job.dates.removed.last[last]!];
  if (Number.isNaN(out)) return endUnknown(chain, service, watchedFrom, entry, meaning, job);
  const life = { watchedFrom, removed: out, meaning, entry };
  if (outLast === out && service.last === service.first) {
    const age = Math.max(entry, ageOn(out, service));
    const isSameDay = meaning === 'failed' && age === 0;
    return newLife(chain, service, job, { ...life, from: age, to: isSameDay ? ONE_DAY : age });
  }
  const from = Math.max(entry, ageOn(out, { ...service, first: service.last }));
  const to = Math.max(from, ageOn(outLast === out ? out : outLast + 1, service));
  return newLife(chain, service, job, { ...life, from, to: to === 0 && meaning === 'failed' ? ONE_DAY : to });
}

// Failed on a day that nobody wrote down: somewhere between coming under record and as-of. Any other end without a
// date says nothing about how long batteries last.
function endUnknown(
  chain: Chain,
  service: Service,
  watchedFrom: Day,
  entry: number,
  meaning: RemovalMeaning,
  job: LifeJob,
): Life | undefined {
  if (meaning !== 'failed') return undefined;
  const to = ageOn(job.asOf, service);
  if (to <= entry) return undefined;
  return newLife(chain, service, job, { watchedFrom, removed: job.asOf, meaning, entry, from: entry, to });
}

function reportBefore(line: number, watchedFrom: Day, { lines, dates, findings }: LifeJob): void {
  const given = `removed ${isoDay(dates.removed.first[line]!)}, records from ${isoDay(watchedFrom)}`;
  findings.add(lines.rows[line]!, {
    kind: 'removed before records begin',
    column: lines.head('removed'),
    given,
  });
}
