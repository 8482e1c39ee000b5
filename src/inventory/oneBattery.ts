import type { Day } from '../basics/calendar.ts';
import { isoDay } from '../basics/calendar.ts';
import type { Whereabouts } from '../service/battery.ts';
import type { Dates } from './dateFindings.ts';
import type { Findings } from './findings.ts';
import type { Lines } from './lines.ts';

/** The rows that are one battery, in the order of their dates. */
export type Chain = readonly number[];

/** The batteries of a sheet, and the lines that say the same life a second time. */
export type Chains = { readonly chains: readonly Chain[]; readonly twice: readonly number[] };

type Job = {
  readonly lines: Lines;
  readonly dates: Dates;
  readonly where: readonly Whereabouts[];
  readonly asOf: Day;
  readonly findings: Findings;
};

/**
 * Which rows are one battery. Rows of one serial (and maker) whose periods don't overlap are one battery; where they
 * overlap it would be in two places at once, so it is kept as two. A life that stands there twice is read once.
 */
export function chainsOf(job: Job): Chains {
  const twice: number[] = [];
  const chains: Chain[] = [];
  for (const lines of bySerial(job.lines)) {
    if (lines.length === 1) chains.push(lines);
    else if (lines.length > MOST_ROWS) chains.push(...noSerial(lines, job));
    else chains.push(...chained(once(lines, job, twice), job));
  }
  return { chains, twice };
}

/** A text that stands in more rows than this is no serial of one battery. */
const MOST_ROWS = 50;

function noSerial(group: readonly number[], { lines, findings }: Job): Chain[] {
  const serial = lines.text('serial')[group[0]!]!;
  findings.add(lines.rows[group[0]!]!, {
    kind: 'in two places at once',
    column: lines.head('serial'),
    given: `${serial} in ${group.length} rows`,
    done: 'taken as no serial: each row counts as a battery of its own',
    count: group.length,
  });
  return group.map((line) => [line]);
}

function bySerial(lines: Lines): Iterable<readonly number[]> {
  const [serials, makers] = [lines.text('serial'), lines.text('maker')];
  const groups = new Map<string | number, number[]>();
  const makersOf = severalMakers(serials, makers);
  serials.forEach((serial, line) => {
    const key = serial === '' ? line : makersOf.has(serial) ? `${serial}\n${makers[line]!}` : serial;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [line]);
    else group.push(line);
  });
  return groups.values();
}

// Serials that more than one maker has used: theirs are told apart by maker.
function severalMakers(serials: readonly string[], makers: readonly string[]): ReadonlySet<string> {
  const first = new Map<string, string>();
  const several = new Set<string>();
  serials.forEach((serial, line) => {
    const maker = makers[line]!;
    if (serial === '' || maker === '') return;
    const known = first.get(serial);
    if (known === undefined) first.set(serial, maker);
    else if (known !== maker) several.add(serial);
  });
  return several;
}

// Of rows with one installation, removal and vehicle the one tested last is kept.
function once(group: readonly number[], { lines, dates }: Job, twice: number[]): readonly number[] {
  const kept = new Map<string, number>();
  const vehicles = lines.text('vehicle');
  const tested = (line: number): number => dates.testedOn.first[line]! || 0;
  for (const line of group) {
    const key = `${dates.installed.first[line]} ${dates.removed.first[line]} ${vehicles[line]}`;
    const known = kept.get(key);
    if (known === undefined) kept.set(key, line);
    else if (tested(line) > tested(known)) {
      kept.set(key, line);
      twice.push(known);
    } else twice.push(line);
  }
  return [...kept.values()];
}

function chained(group: readonly number[], job: Job): Chain[] {
  const { dates, where } = job;
  const start = (line: number): number => {
    const installed = dates.installed.first[line]!;
    if (!Number.isNaN(installed)) return installed;
    return where[line] === 'removed' ? dates.removed.first[line]! || 0 : Number.POSITIVE_INFINITY;
  };
  const ordered = [...group].sort((a, b) => start(a) - start(b));
  const chains: number[][] = [];
  for (const line of ordered) {
    const chain = chains.find((one) => isOver(one.at(-1)!, start(line), job));
    if (chain !== undefined) chain.push(line);
    else {
      if (chains.length > 0) reportTwoPlaces(chains[0]!.at(-1)!, line, job);
      chains.push([line]);
    }
  }
  for (const chain of chains) if (chain.length > 1) reportSeveralRows(chain, job);
  return chains;
}

// A removal on the day of the next installation is a move.
function isOver(line: number, next: number, { dates, where }: Job): boolean {
  if (where[line] === 'inService') return false;
  const out = dates.removed.first[line]!;
  return Number.isNaN(out) ? next === Number.POSITIVE_INFINITY : out <= next;
}

function reportTwoPlaces(first: number, line: number, { lines, dates, findings }: Job): void {
  const place = (at: number): string => {
    const vehicle = lines.text('vehicle')[at] || lines.text('site')[at] || '';
    const installed = dates.installed.first[at]!;
    const since = Number.isNaN(installed) ? '' : ` from ${isoDay(installed)}`;
    return `row ${lines.rows[at]!}${vehicle === '' ? '' : ` in ${vehicle}`}${since}`;
  };
  findings.add(lines.rows[line]!, {
    kind: 'in two places at once',
    column: lines.head('serial'),
    given: `${lines.text('serial')[line]!}: ${place(first)}; ${place(line)}`,
  });
}

function reportSeveralRows(chain: Chain, { lines, findings }: Job): void {
  const last = chain.at(-1)!;
  findings.add(lines.rows[last]!, {
    kind: 'one battery in several rows',
    column: lines.head('serial'),
    given: `${lines.text('serial')[last]!} in rows ${chain.map((line) => lines.rows[line]!).join(', ')}`,
  });
}
