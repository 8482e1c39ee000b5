import fc from 'fast-check';
import type { LifeRecord } from '../../src/index.ts';

/** A life that failed at an age. */
export const failedAt = (age: number, entry = 0, count = 1): LifeRecord => ({
  ...{ kind: 'exact', entry, from: age, to: age, count },
});

/** A life known to have outlived an age. */
export const goodAt = (age: number, entry = 0, count = 1): LifeRecord => ({
  ...{ kind: 'right', entry, from: age, to: age, count },
});

/** A life that failed between two ages. */
export const failedBetween = (from: number, to: number, entry = 0, count = 1): LifeRecord => ({
  ...{ kind: 'interval', entry, from, to, count },
});

/** A life that failed before an age. */
export const failedBefore = (to: number, count = 1): LifeRecord => ({
  ...{ kind: 'left', entry: 0, from: 0, to, count },
});

/** Lives of all four kinds, some under record late, with failures enough and apart for an estimate. */
export const anyFleet: fc.Arbitrary<LifeRecord[]> = fc
  .array(
    fc.record({
      age: fc.integer({ min: 8, max: 120 }),
      kind: fc.constantFrom('exact', 'exact', 'right', 'right', 'interval', 'left'),
      late: fc.integer({ min: 0, max: 9 }),
      count: fc.integer({ min: 1, max: 4 }),
    }),
    { minLength: 4, maxLength: 40 },
  )
  .map((rows) =>
    rows.map(({ age, kind, late, count }): LifeRecord => {
      const entry = late > 6 && kind !== 'left' ? Math.floor(age / 3) : 0;
      if (kind === 'exact') return failedAt(age, entry, count);
      if (kind === 'right') return goodAt(age, entry, count);
      return kind === 'left' ? failedBefore(age, count) : failedBetween(age - 5, age, entry, count);
    }),
  )
  .map((rows) => [failedAt(30), failedAt(44), failedAt(57), goodAt(70), goodAt(90), ...rows]);

/** Every property runs on the same draws. */
export const SEED = { seed: 20_260_731, numRuns: 60 };
