import { arrangeRows } from './arrange.ts';
import { throwDirt } from './dirt.ts';
import type { Planted } from './dirtyRow.ts';
import type { DemoBattery } from './fleet.ts';
import { simulateFleet } from './fleet.ts';
import { lastMonthRows } from './lastMonth.ts';
import type { Row } from './register.ts';
import { tidyRows } from './register.ts';
import type { SideSheet } from './sideSheets.ts';
import { sideSheets } from './sideSheets.ts';
import type { Stories } from './stories.ts';
import { tellStories } from './stories.ts';
import { withYearlyTests } from './yearlyTests.ts';

/** The seed of the demonstration; each step adds its own number, so that one step's change leaves the others alone. */
export const SEED = 2026;

/** The whole demonstration: the truth, the rows as they stand on the sheet, and what was planted. */
export type Demo = {
  readonly batteries: readonly DemoBattery[];
  readonly stories: Stories;
  readonly register: readonly Row[];
  readonly sides: readonly SideSheet[];
  readonly planted: readonly Planted[];
  /** One station's file of the month before. */
  readonly lastMonth: readonly Row[];
};

/** Makes the demonstration; the same seed makes the same one. */
export function makeDemo(seed: number = SEED): Demo {
  const batteries = simulateFleet(seed);
  const stories = tellStories(seed + 1, batteries);
  const rows = tidyRows(seed + 2, batteries, stories);
  const planted = throwDirt(seed + 3, rows);
  const register = arrangeRows(rows);
  const sides = sideSheets({ ...stories, tests: withYearlyTests(seed + 4, stories.tests) }, planted);
  return { batteries, stories, register, sides, planted, lastMonth: lastMonthRows(register) };
}
