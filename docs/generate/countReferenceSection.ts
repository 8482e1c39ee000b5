import { beliefCases } from '../../tests/planning/reference/beliefRows.ts';
import { countCases } from '../../tests/planning/reference/countRows.ts';
import { referenceTable } from './referenceTable.ts';

/** Beliefs about lives, counts, renewals and stock beside other programs, case by case. */
export function countReferenceSection(): string {
  return [
    '## Counts, renewals and stock against other programs',
    'What a forecast is put together from, worked out by separate programs: 40-digit arithmetic, a power series, and for beliefs a finer grid (801 x 801) with characteristic functions. Whole counts have to be equal unless a chance lies within 0.003 of a step. Beliefs are sums over a grid, so their limits may differ by 2 in 1000, means by 5, deviations of counts by 10; chances by 0.003. The values themselves stand in `tests/planning/reference` and `tests/life/reference/posterior.json`.',
    referenceTable([...countCases, ...beliefCases], 'inputs from'),
  ].join('\n\n');
}
