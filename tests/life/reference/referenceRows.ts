import { lifeTableRows, turnbullRows } from './curveRows.ts';
import { fixedShapeRows, groupRows, maximumLikelihoodRows, regressionRows } from './fitRows.ts';
import { competingRows, conditionalRows, replacementRows } from './knownLifeRows.ts';
import type { ReferenceRow } from './referenceRow.ts';
import { specialFunctionRows } from './specialFunctionRows.ts';

/** Every reference value of the room, case by case in the order of the methods. */
export const referenceRows: readonly ReferenceRow[] = [
  ...specialFunctionRows,
  ...lifeTableRows,
  ...turnbullRows,
  ...maximumLikelihoodRows,
  ...fixedShapeRows,
  ...groupRows,
  ...regressionRows,
  ...conditionalRows,
  ...competingRows,
  ...replacementRows,
];

/** The same rows, one list for each case. */
export const referenceCases: readonly (readonly ReferenceRow[])[] = [
  ...referenceRows
    .reduce(
      (cases, row) => cases.set(row.id, [...(cases.get(row.id) ?? []), row]),
      new Map<string, ReferenceRow[]>(),
    )
    .values(),
];
