import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';
import type { Battery } from '../service/battery.ts';
import type { Inventory } from './inventory.ts';
import { whereText } from './whereText.ts';

/** A battery in both files, as it was and as it is. */
export type Change = { readonly before: Battery; readonly now: Battery; readonly what: string };

/** Two files of one inventory, compared battery by battery. */
export type FileComparison = {
  /** Only in the later file. */
  readonly fresh: readonly Battery[];
  /** Only in the earlier file. */
  readonly gone: readonly Battery[];
  /** Another site, vehicle, place or shelf; fitted, put in stock or removed. */
  readonly moved: readonly Change[];
  readonly verdictChanged: readonly Change[];
  /** In both files, the same place and the same verdict. */
  readonly unchanged: number;
  /** What could not be compared and why, in sentences. */
  readonly notCompared: readonly string[];
};

/**
 * Last month's file beside this month's: new, gone, moved, verdict changed. Batteries are matched by serial, and by
 * maker where one serial stands for several makers' batteries; capital letters don't matter. A serial that stands for
 * several batteries within one file is compared with nothing and told of. Where the files share some sites only, name
 * them: a battery is then new or gone only if it is, or was, at one of them.
 * @param before  the earlier inventory
 * @param now     the later inventory
 * @param sites   sites that both files cover; left out = all
 * @returns the lists, and what could not be compared
 * @problem missing   when a file has no serial in any row
 * @problem badInput  when no battery is in both
 */
export function compareFiles(
  before: Inventory,
  now: Inventory,
  sites?: readonly string[],
): Outcome<FileComparison> {
  for (const [file, { batteries }] of [
    ['the earlier file', before] as const,
    ['the later file', now] as const,
  ])
    if (batteries.every(({ serial }) => serial === '')) return problem('missing', 'noSerials', file);
  const needMaker = severalMakers([...before.batteries, ...now.batteries]);
  const [then, today] = [keyed(before.batteries, needMaker), keyed(now.batteries, needMaker)];
  const doubtful = new Set([...then.several.keys(), ...today.several.keys()]);
  const isCovered = ({ site }: Battery): boolean =>
    sites === undefined || sites.some((each) => same(each) === same(site));
  const pairs = [...then.one].filter(([key]) => today.one.has(key) && !doubtful.has(key));
  if (pairs.length === 0) return problem('badInput', 'nothingInCommon', 'the earlier file', then.one.size);
  const changes = pairs.map(([key, was]) => changesOf(was, today.one.get(key)!));
  const moved = changes.flatMap((each) => each.moved);
  const verdictChanged = changes.flatMap((each) => each.verdict);
  return answer({
    fresh: only(today, then, doubtful).filter(isCovered),
    gone: only(then, today, doubtful).filter(isCovered),
    moved,
    verdictChanged,
    unchanged: changes.filter((each) => each.moved.length + each.verdict.length === 0).length,
    notCompared: [
      ...notCompared('the earlier file', then, 'new'),
      ...notCompared('the later file', today, 'gone'),
    ],
  });
}

const same = (text: string): string => text.trim().toUpperCase();

// Serials that more than one maker has used, in either file.
function severalMakers(batteries: readonly Battery[]): ReadonlySet<string> {
  const makers = new Map<string, string>();
  const several = new Set<string>();
  for (const { serial, maker } of batteries) {
    if (serial === '' || maker === '') continue;
    const known = makers.get(same(serial));
    if (known === undefined) makers.set(same(serial), same(maker));
    else if (known !== same(maker)) several.add(same(serial));
  }
  return several;
}

type Keyed = {
  readonly one: ReadonlyMap<string, Battery>;
  /** Serials that stand for several batteries of this file. */
  readonly several: ReadonlyMap<string, readonly Battery[]>;
  readonly withoutSerial: number;
};

function keyed(batteries: readonly Battery[], needMaker: ReadonlySet<string>): Keyed {
  const groups = new Map<string, Battery[]>();
  for (const battery of batteries) {
    const serial = same(battery.serial);
    if (serial === '') continue;
    const key = needMaker.has(serial) ? `${serial}\n${same(battery.maker)}` : serial;
    groups.set(key, [...(groups.get(key) ?? []), battery]);
  }
  const several = new Map([...groups].filter(([, group]) => group.length > 1));
  const one = new Map([...groups].flatMap(([key, group]) => (group.length === 1 ? [[key, group[0]!]] : [])));
  return { one, several, withoutSerial: batteries.filter(({ serial }) => serial === '').length };
}

function only(here: Keyed, there: Keyed, doubtful: ReadonlySet<string>): Battery[] {
  return [...here.one].flatMap(([key, battery]) =>
    there.one.has(key) || doubtful.has(key) ? [] : [battery],
  );
}

function changesOf(before: Battery, now: Battery): { moved: Change[]; verdict: Change[] } {
  const [was, is] = [whereText(before), whereText(now)];
  const [then, today] = [before.verdict ?? 'no test', now.verdict ?? 'no test'];
  return {
    moved: same(was) === same(is) ? [] : [{ before, now, what: `${was}; now ${is}` }],
    verdict: then === today ? [] : [{ before, now, what: `${then}; now ${today}` }],
  };
}

const SERIALS_NAMED = 5;

function notCompared(file: string, { several, withoutSerial }: Keyed, listed: 'new' | 'gone'): string[] {
  const told: string[] = [];
  const [batteries, some] = withoutSerial === 1 ? ['battery', 'it may be'] : ['batteries', 'they may be'];
  if (withoutSerial > 0)
    told.push(
      `${file} has ${withoutSerial} ${batteries} without a serial; ${some} among those listed as ${listed}`,
    );
  if (several.size === 0) return told;
  const named = [...several.values()]
    .slice(0, SERIALS_NAMED)
    .map((group) => `${group[0]!.serial} (rows ${group.map(({ row }) => row).join(', ')})`);
  const more = several.size > named.length ? ` and ${several.size - named.length} more` : '';
  return [...told, `${file} has several batteries of one serial: ${named.join('; ')}${more}`];
}
