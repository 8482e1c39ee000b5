import { DAYS_PER_MONTH } from '../basics/units.ts';
import type { Battery } from '../service/battery.ts';
import type { Findings } from './findings.ts';
import type { Lines } from './lines.ts';
import { plainConstruction, SET_MONTHS_APART, setNamer } from './setName.ts';

/** A vehicle holds at most so many batteries of one set; more are a store that is called a vehicle. */
const MOST_IN_SET = 8;

/** A place of a site that more batteries share says where in a vehicle they are, and not which place it is. */
const MOST_AT_PLACE = 3;

const ROWS_NAMED = 8;

/** What is odd about the sets in service, and about places that hold two batteries. */
export function checkSets(batteries: readonly Battery[], lines: Lines, findings: Findings): void {
  const inService = batteries.filter(({ whereabouts }) => whereabouts === 'inService');
  const nameOf = setNamer(lines.at.has('set'));
  const sets = [...grouped(inService, nameOf).entries()].filter(([, set]) => set.length <= MOST_IN_SET);
  const pairs = mostAreEven(sets.map(([, set]) => set.length));
  for (const [name, set] of sets) checkSet(name, set, pairs, lines, findings);
  for (const [name, both] of grouped(inService, placeOf)) {
    if (both.length < 2 || (both[0]!.vehicle === '' && both.length > MOST_AT_PLACE)) continue;
    const column = lines.head('place') || lines.head('vehicle');
    for (const { row } of both.slice(1)) {
      findings.add(row, {
        kind: 'two batteries in one place',
        column,
        given: `${name}: rows ${rowsOf(both)}`,
      });
    }
  }
}

function grouped(
  batteries: readonly Battery[],
  nameOf: (battery: Battery) => string,
): Map<string, Battery[]> {
  const groups = new Map<string, Battery[]>();
  for (const battery of batteries) {
    const name = nameOf(battery);
    if (name === '') continue;
    const group = groups.get(name);
    if (group === undefined) groups.set(name, [battery]);
    else group.push(battery);
  }
  return groups;
}

const placeOf = ({ place = '', vehicle, site, set }: Battery): string => {
  if (place === '' || (vehicle === '' && site === '')) return '';
  return `${vehicle === '' ? `site ${site}` : `vehicle ${vehicle}`}${set === '' || set === vehicle ? '' : `, set ${set}`}, place ${place}`;
};

function rowsOf(batteries: readonly Battery[]): string {
  const rows = batteries.slice(0, ROWS_NAMED).map(({ row }) => row);
  const more = batteries.length - rows.length;
  return more > 0 ? `${rows.join(', ')} and ${more} more` : rows.join(', ');
}

const mostAreEven = (sizes: readonly number[]): boolean =>
  sizes.filter((size) => size % 2 === 0).length > sizes.length / 2;

function checkSet(
  name: string,
  set: readonly Battery[],
  pairs: boolean,
  lines: Lines,
  findings: Findings,
): void {
  const { row } = set[0]!;
  const column = lines.head('set') || lines.head('vehicle');
  if (pairs && set.length % 2 === 1) {
    const given = `${name}: ${set.length} ${set.length === 1 ? 'battery' : 'batteries'} in service, row ${rowsOf(set)}`;
    findings.add(row, { kind: 'odd number in a set', column, given });
  }
  const known = set.filter(({ constructionAssumed }) => constructionAssumed !== true);
  const kinds = new Set(known.map(plainConstruction));
  if (kinds.size > 1) {
    const given = `${name}: ${[...kinds].join(' and ')}, rows ${rowsOf(set)}`;
    findings.add(row, { kind: 'set with mixed construction', column, given });
  }
  const apart = Math.max(spread(set.map(({ ageMonths }) => ageMonths)), spread(set.map(monthsMade)));
  if (apart > SET_MONTHS_APART) {
    const given = `${name}: ${apart.toFixed(0)} months apart, rows ${rowsOf(set)}`;
    findings.add(row, { kind: 'set over 12 months apart', column, given });
  }
}

const monthsMade = ({ made }: Battery): number | undefined =>
  made === undefined ? undefined : made / DAYS_PER_MONTH;

function spread(values: readonly (number | undefined)[]): number {
  const known = values.filter((value) => value !== undefined);
  return known.length < 2 ? 0 : Math.max(...known) - Math.min(...known);
}
