import type { Field } from '../../src/inventory/fields.ts';
import type { Format } from '../../src/report/sheet.ts';

/** The columns that can be filled, in the order in which they are offered. */
export const FILL_KEYS = [
  'made',
  'lot',
  'monthsInService',
  'monthsOnShelf',
  'charge',
  'verdict',
  'reason',
  'chargeBy',
  'chance12',
] as const;
export type FillKey = (typeof FILL_KEYS)[number];

/** A column that can be filled: its head, how it is shown, and the fields of which it needs one of each group. */
export type FillSpec = {
  readonly head: string;
  readonly format: Format;
  readonly needs: readonly (readonly Field[])[];
};

export const FILL_SPECS: Readonly<Record<FillKey, FillSpec>> = {
  made: { head: 'Date made', format: 'date', needs: [['code', 'made']] },
  lot: { head: 'Lot', format: 'text', needs: [['code', 'lot']] },
  monthsInService: { head: 'Months in service', format: 'months', needs: [['installed']] },
  monthsOnShelf: { head: 'Months on the shelf', format: 'months', needs: [['code', 'made']] },
  charge: { head: 'State of charge', format: 'share', needs: [['restVolts']] },
  verdict: { head: 'Verdict', format: 'text', needs: [['restVolts', 'reading', 'loadVolts', 'damage']] },
  reason: {
    head: 'Reason and next step',
    format: 'text',
    needs: [['restVolts', 'reading', 'loadVolts', 'damage']],
  },
  chargeBy: { head: 'Charge again by', format: 'date', needs: [['chargedOn']] },
  chance12: { head: 'Chance of failing in 12 months', format: 'chance', needs: [['installed']] },
};

/** The head of the column that says why another is empty. */
export const WHY_HEAD = 'Why empty';

/** The fields that a column lacks in an inventory; none where it can be filled. */
export function lacking(key: FillKey, has: ReadonlySet<Field>): readonly (readonly Field[])[] {
  return FILL_SPECS[key].needs.filter((anyOf) => !anyOf.some((field) => has.has(field)));
}
