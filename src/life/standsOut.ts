/** A battery life as the search for odd groups needs it; ages in months. */
export type GroupedLife = {
  readonly entry: number;
  /** Age at removal or today; for a removal known to the month its beginning. */
  readonly from: number;
  readonly failed: boolean;
};

/** How lives are grouped: a name for the kind of group, and the group of a life (empty = of none). */
export type Grouping<L> = { readonly kind: string; readonly groupOf: (life: L) => string };

/** A group with more early failures than chance explains. */
export type OddGroup = {
  readonly kind: string;
  readonly name: string;
  /** Its lives that were under record while young, and how many of them failed early. */
  readonly lives: number;
  readonly failures: number;
  /** Early failures that its lives would have had at the fleet's own rate, age for age. */
  readonly expected: number;
  /** Chance of so many or more by luck alone, for this group by itself. */
  readonly chance: number;
  /** Chance that luck alone shows such a group somewhere among all that were looked at. */
  readonly chanceAnywhere: number;
};

/** Settings of the search. */
export type OddGroupSearch = {
  /** A failure up to this age is early [months]. */
  readonly earlyMonths: number;
  /** Groups with fewer early failures are never named. */
  readonly leastFailures: number;
  /** Largest chance anywhere at which a group is named. */
  readonly level: number;
};

/** Two years, three failures, one false alarm in twenty searches. */
export const DEFAULT_ODD_GROUP_SEARCH: OddGroupSearch = { earlyMonths: 24, leastFailures: 3, level: 0.05 };

/**
 * Groups - lots, makers, sites, vehicles - with more early failures than chance explains. Each early failure falls,
 * by chance alone, on a group with the group's share of the months lived at that age; the number on a group is then
 * a sum of independent trials of unequal chance, taken exactly. The chance is raised for the number of groups that
 * could have been named. Groups are named one at a time: the lives of one that is named are left out before the next is
 * looked for, so that a maker is not named for its one bad lot. Says nothing about why.
 * @param lives      lives under record, late entry allowed
 * @param groupings  ways to group them
 * @param search     what is early, least failures, largest chance
 * @returns the odd groups, in the order in which they were found, the least likely first
 * @source mantelHaenszel1959 expected failures from the share at risk, stratum by stratum (from memory)
 * @source sidak1967 1 - (1 - p)^m for the least of m chances (from memory)
 */
export function standsOut<L extends GroupedLife>(
  lives: readonly L[],
  groupings: readonly Grouping<L>[],
  search: OddGroupSearch = DEFAULT_ODD_GROUP_SEARCH,
): OddGroup[] {
  const named: OddGroup[] = [];
  let rest = lives;
  while (named.length < MOST_NAMED) {
    const odd = oddest(rest, groupings, search);
    if (odd === undefined) break;
    named.push(odd);
    const groupOf = groupings.find(({ kind }) => kind === odd.kind)!.groupOf;
    rest = rest.filter((life) => groupOf(life) !== odd.name);
  }
  return named;
}

/** More odd groups than this are no exceptions any more. */
const MOST_NAMED = 20;

function oddest<L extends GroupedLife>(
  lives: readonly L[],
  groupings: readonly Grouping<L>[],
  search: OddGroupSearch,
): OddGroup | undefined {
  const all = tallied(lives, () => 'all', search.earlyMonths).get('all');
  if (all === undefined) return undefined;
  const looked = groupings.flatMap(({ kind, groupOf }) =>
    [...tallied(lives, groupOf, search.earlyMonths)]
      .filter(([name, { lives: size }]) => name !== '' && size >= search.leastFailures)
      .map(([name, tally]) => ({ kind, name, tally })),
  );
  return looked
    .filter(({ tally }) => tally.failures >= search.leastFailures)
    .map(({ kind, name, tally }) => oddness(kind, name, tally, all, looked.length))
    .filter(({ chanceAnywhere }) => chanceAnywhere <= search.level)
    .sort((a, b) => a.chance - b.chance)[0];
}

/** Months lived and failures by whole month of age, up to the end of what is early. */
type Tally = { lives: number; failures: number; readonly lived: Float64Array; readonly failed: Float64Array };

function tallied<L extends GroupedLife>(
  lives: readonly L[],
  groupOf: (life: L) => string,
  earlyMonths: number,
): Map<string, Tally> {
  const tallies = new Map<string, Tally>();
  const months = Math.ceil(earlyMonths);
  for (const life of lives) {
    const begin = Math.max(0, life.entry);
    const end = Math.min(earlyMonths, life.from);
    if (!(end > begin)) continue;
    const name = groupOf(life);
    let tally = tallies.get(name);
    if (tally === undefined) {
      tally = { lives: 0, failures: 0, lived: new Float64Array(months), failed: new Float64Array(months) };
      tallies.set(name, tally);
    }
    addLife(tally, begin, end, life.failed && life.from <= earlyMonths);
  }
  return tallies;
}

function addLife(tally: Tally, begin: number, end: number, failed: boolean): void {
  tally.lives += 1;
  for (let month = Math.floor(begin); month < end; month += 1) {
    tally.lived[month]! += Math.min(end, month + 1) - Math.max(begin, month);
  }
  if (!failed) return;
  tally.failures += 1;
  // A failure at the very end of a month belongs to the month that was lived.
  tally.failed[Math.ceil(end) - 1]! += 1;
}

function oddness(kind: string, name: string, group: Tally, all: Tally, looked: number): OddGroup {
  const chances = [...all.failed].flatMap((failures, month) =>
    new Array<number>(failures).fill(group.lived[month]! / all.lived[month]!),
  );
  const chance = chanceOfAtLeast(group.failures, chances);
  const { lives, failures } = group;
  const expected = chances.reduce((sum, each) => sum + each, 0);
  return {
    kind,
    name,
    lives,
    failures,
    expected,
    chance,
    chanceAnywhere: -Math.expm1(looked * Math.log1p(-chance)),
  };
}

/**
 * Chance of at least `count` successes in independent trials of unequal chance, exact.
 * @param count    successes, whole
 * @param chances  chance of each trial, 0 to 1
 * @example chanceOfAtLeast(1, [0.4, 0.5]) // 0.700
 */
export function chanceOfAtLeast(count: number, chances: readonly number[]): number {
  // reached[k]: chance of exactly k so far; the last entry gathers all that is enough.
  const reached = new Float64Array(count + 1);
  reached[0] = 1;
  for (const chance of chances) {
    reached[count]! += count === 0 ? 0 : chance * reached[count - 1]!;
    for (let k = count - 1; k > 0; k -= 1) reached[k] = reached[k]! * (1 - chance) + reached[k - 1]! * chance;
    if (count > 0) reached[0]! *= 1 - chance;
  }
  return Math.min(1, reached[count]!);
}
