import { describe, expect, it } from 'vitest';
import { rowAgrees } from '../life/reference/referenceRow.ts';
import { beliefCases } from './reference/beliefRows.ts';
import { countCases } from './reference/countRows.ts';

const titled = [...countCases, ...beliefCases].map((rows) => ({
  id: rows[0]!.id,
  title: rows[0]!.title,
  rows,
}));

// docs/validation.md prints these rows: what it shows as agreeing has to agree.
describe('counts and beliefs against other programs, as docs/validation.md prints them', () => {
  it('holds at least thirty cases and five hundred values', () => {
    expect(titled.length).toBeGreaterThanOrEqual(30);
    expect(titled.reduce((sum, { rows }) => sum + rows.length, 0)).toBeGreaterThan(500);
    expect(new Set(titled.map(({ id }) => id)).size).toBe(titled.length);
  });

  it.each(titled)('$id $title', ({ rows }) => {
    const wrong = rows.filter((row) => !rowAgrees(row));
    expect(wrong.map((row) => [row.quantity, row.expected, row.ours()])).toEqual([]);
  });
});
