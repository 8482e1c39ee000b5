import type { LifeTableRow, TableLimits, TableQuantile } from '../../../src/index.ts';
import { lifeTable, lifeTableQuantile, turnbullTable } from '../../../src/index.ts';
import { valueOf } from '../../published/check.ts';
import lifeTables from './lifeTables.json' with { type: 'json' };
import { readLives } from './readLives.ts';
import type { ReferenceRow } from './referenceRow.ts';
import { once } from './referenceRow.ts';
import turnbull from './turnbull.json' with { type: 'json' };

const TABLE_COLUMNS = [
  'month',
  'atRisk',
  'failed',
  'surviving',
  'standardError',
  'low',
  'high',
  'cumulativeHazard',
] as const satisfies readonly (keyof LifeTableRow)[];
const QUANTILE_COLUMNS = ['age', 'low', 'high'] as const satisfies readonly (keyof TableQuantile)[];

/** Product-limit tables: every figure of every row, and quantiles with their limits. */
export const lifeTableRows: readonly ReferenceRow[] = lifeTables.flatMap((each) => {
  const table = once(() =>
    valueOf(
      lifeTable(readLives(each.lives, each.group ?? undefined), {
        level: each.level,
        limits: each.limits as TableLimits,
        startAge: each.startAge,
      }),
    ),
  );
  const row = (quantity: string, value: number | null, ours: () => number | undefined): ReferenceRow => ({
    ...{ id: each.id, title: each.title, source: each.source, quantity, ours },
    expected: value ?? undefined,
    within: each.absolute + each.relative * Math.abs(value ?? 0),
  });
  return [
    row('rows', each.rows.length, () => table().rows.length),
    ...each.rows.flatMap((expected, index) =>
      TABLE_COLUMNS.map((name, column) =>
        row(`${name} at ${expected[0]}`, expected[column]!, () => table().rows[index]?.[name]),
      ),
    ),
    ...each.quantiles.flatMap(([share, ...expected]) =>
      QUANTILE_COLUMNS.map((name, column) =>
        row(`${name} of share ${share}`, expected[column]!, () => lifeTableQuantile(table(), share!)[name]),
      ),
    ),
  ];
});

/** Turnbull's estimate from inspection records. */
export const turnbullRows: readonly ReferenceRow[] = turnbull.flatMap((each) => {
  const table = once(() => valueOf(turnbullTable(readLives(each.lives))));
  const head = { id: each.id, title: each.title, source: each.source };
  const [logLikelihood, within] = each.logLikelihood as [number, number];
  return [
    {
      ...head,
      quantity: 'log-likelihood',
      expected: logLikelihood,
      within,
      ours: () => table().logLikelihood,
    },
    { ...head, quantity: 'steps', expected: each.steps.length, within: 0, ours: () => table().steps.length },
    ...each.steps.flatMap(([from, to, share], index): ReferenceRow[] => [
      {
        ...head,
        quantity: `start of step ${index + 1}`,
        expected: from!,
        within: 0,
        ours: () => table().steps[index]?.from,
      },
      {
        ...{
          ...head,
          quantity: `end of step ${index + 1} (undefined = never)`,
          expected: to ?? undefined,
          within: 0,
        },
        ours: () => finite(table().steps[index]?.to),
      },
      {
        ...{ ...head, quantity: `share of step ${index + 1}`, expected: share! },
        within: each.absolute + each.relative * share!,
        ours: () => table().steps[index]?.share,
      },
    ]),
  ];
});

const finite = (value: number | undefined): number | undefined =>
  Number.isFinite(value) ? value : undefined;
