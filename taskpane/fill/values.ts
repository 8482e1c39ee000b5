import type { Day } from '../../src/basics/calendar.ts';
import type { Outcome } from '../../src/basics/outcome.ts';
import type { Inventory } from '../../src/inventory/inventory.ts';
import { failureWithin } from '../../src/life/failureWithin.ts';
import type { Battery } from '../../src/service/battery.ts';
import { monthsInService } from '../../src/service/monthsInService.ts';
import { monthsOnShelf } from '../../src/service/monthsOnShelf.ts';
import type { FillKey } from './columns.ts';
import { FILL_SPECS } from './columns.ts';
import type { FillFacts } from './expressions.ts';

/** An answer of the inventory for one battery; undefined = none. */
type Answer = string | number | undefined;

export type ValueJob = { readonly asOf: Day; readonly life: FillFacts['life'] };

const AVERAGE_MONTH = 30.4375;

/** What the inventory knows of a battery, for one column. */
export function valueFor(key: FillKey, battery: Battery, job: ValueJob): Answer {
  const answer = VALUES[key](battery, job);
  return answer === '' ? undefined : answer;
}

const known = (outcome: Outcome<number>): number | undefined => (outcome.ok ? outcome.value : undefined);

const VALUES: Readonly<Record<FillKey, (battery: Battery, job: ValueJob) => Answer>> = {
  made: ({ made }) => made,
  lot: ({ lot }) => lot,
  monthsInService: (battery, { asOf }) => {
    const { installed, monthsOut } = battery;
    const until = outOn(battery, asOf);
    if (installed === undefined || until === undefined) return undefined;
    return known(monthsInService(installed, until, monthsOut));
  },
  monthsOnShelf: ({ made, installed, installedFromMade, whereabouts }, { asOf }) => {
    const until = whereabouts === 'inStock' ? asOf : installed;
    if (made === undefined || until === undefined || installedFromMade) return undefined;
    return known(monthsOnShelf(made, until));
  },
  charge: ({ charge }) => charge,
  verdict: ({ verdict }) => verdict,
  reason: ({ verdictReason }) => verdictReason,
  chargeBy: ({ chargeBy }) => chargeBy,
  chance12: ({ whereabouts, ageMonths }, { life }) => {
    if (whereabouts !== 'inService' || ageMonths === undefined || life === undefined) return undefined;
    return known(failureWithin(ageMonths, 12, life.shape, life.scale));
  },
};

// The day on which it went out follows from its age then.
function outOn({ whereabouts, installed, ageMonths, monthsOut }: Battery, asOf: Day): Day | undefined {
  if (whereabouts === 'inService') return asOf;
  if (ageMonths === undefined || installed === undefined) return undefined;
  return installed + Math.round((ageMonths + monthsOut) * AVERAGE_MONTH);
}

/** Whether a column says anything of a battery where it is: stock has no months in service. */
export function appliesTo(key: FillKey, { whereabouts }: Battery): boolean {
  if (key === 'monthsInService') return whereabouts !== 'inStock';
  if (key === 'chance12') return whereabouts === 'inService';
  return key !== 'chargeBy' || whereabouts === 'inStock';
}

/** Why a column has no answer in a row: what was found wrong there, else what the row does not say. */
export function whyNot(
  key: FillKey,
  found: Inventory['toCheck'],
  heads: ReadonlyMap<string, FillKey[]>,
): string {
  const own = found.filter(({ column }) => heads.get(column)?.includes(key));
  const { head } = FILL_SPECS[key];
  if (own.length === 0) return `${head}: ${NOT_GIVEN[key]}`;
  return `${head}: ${own.map(({ kind, given }) => (given === '' ? kind : `${kind} (${given})`)).join(', ')}`;
}

const NOT_GIVEN: Readonly<Record<FillKey, string>> = {
  made: 'no code and no date made is given',
  lot: 'the code has no lot, or none is given',
  monthsInService: 'no date installed or removed is known',
  monthsOnShelf: 'made or installed is not known',
  charge: 'no rest voltage that counts',
  verdict: 'no reading that counts',
  reason: 'no reading that counts',
  chargeBy: 'no full charge is on record',
  chance12: 'the age is not known',
};
