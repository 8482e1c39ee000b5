import { expect, it } from 'vitest';
import type { PlanSettings } from '../../../src/planning/planSettings.ts';
import { compareTable } from '../../../taskpane/views/plan/comparePlans.ts';
import { PRICED, reportFacts } from '../../report/reportFacts.ts';

const planOf = (settings: Partial<PlanSettings>) => reportFacts(settings).plan;
const number = (cell: string | undefined): number => Number(cell?.replace(/[,+]/g, ''));

it('sets units and money of each year beside each other, with the difference and the sum', () => {
  const kept = planOf(PRICED);
  const now = planOf({ ...PRICED, stockTarget: PRICED.stockTarget! + 10 });
  const { heads, rows, total } = compareTable('A', kept, now);
  expect(heads.map(({ text }) => text)).toEqual([
    ...['Fiscal year', 'A: units', 'now: units', 'difference: units'],
    ...['A: net money', 'now: net money', 'difference: net money'],
  ]);
  expect(rows.map(([label]) => label)).toEqual(kept.years.map(({ label }) => label));
  for (const row of [...rows, total!]) {
    expect(number(row[2]) - number(row[1])).toBe(number(row[3]));
    expect(Math.abs(number(row[5]) - number(row[4]) - number(row[6]))).toBeLessThanOrEqual(1);
  }
  expect(total![3]).toBe('+10');
});

it('a year that only one plan has, and a missing price, are said as such', () => {
  const { rows, total } = compareTable('A', planOf({ years: 2 }), planOf({ years: 3 }));
  expect(rows[2]!.slice(1)).toEqual(['–', rows[2]![2], '–', 'no price yet', 'no price yet', '–']);
  expect(total!.slice(4)).toEqual(['no price yet', 'no price yet', '–']);
});
