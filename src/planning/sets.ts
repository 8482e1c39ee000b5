import type { AgeBin } from './ageBins.ts';

/** A battery in service: its age [months] and the name of the 24 V set it belongs to; empty = of none. */
export type SetMember = { readonly age: number; readonly set: string };

/**
 * Bins for a fleet whose sets are renewed as a whole when one battery of them fails: one bin for each combination
 * of whole months of age, with the mean ages of its members. Purchases then follow sets, and batteries of one set
 * are no independent purchases.
 * @param members  batteries in service; a set's name must be its own in the fleet
 * @returns bins for `forecastCounts`; batteries of no set stand alone
 */
export function setBins(members: Iterable<SetMember>): AgeBin[] {
  const bins = new Map<string, { sums: number[]; count: number }>();
  for (const ages of setsOf(members)) {
    const key = ages.map(Math.floor).join(' ');
    const bin = bins.get(key) ?? { sums: ages.map(() => 0), count: 0 };
    ages.forEach((age, i) => (bin.sums[i]! += age));
    bin.count += 1;
    bins.set(key, bin);
  }
  return [...bins.values()].map(({ sums, count }) => {
    const [age, ...mates] = sums.map((sum) => sum / count);
    return mates.length === 0 ? { age: age!, count } : { age: age!, mates, count };
  });
}

// The ages of each set, youngest first.
function setsOf(members: Iterable<SetMember>): number[][] {
  const alone: number[][] = [];
  const sets = new Map<string, number[]>();
  for (const { age, set } of members) {
    const ages = set === '' ? undefined : sets.get(set);
    if (ages !== undefined) ages.push(age);
    else if (set === '') alone.push([age]);
    else sets.set(set, [age]);
  }
  return [...alone, ...[...sets.values()].map((ages) => ages.sort((a, b) => a - b))];
}
