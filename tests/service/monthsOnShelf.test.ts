import { describe, expect, it } from 'vitest';
import { dayFromParts } from '../../src/basics/calendar.ts';
import { monthsOnShelf } from '../../src/service/monthsOnShelf.ts';

describe('monthsOnShelf', () => {
  it('by hand: made in November, issued in June', () => {
    const made = dayFromParts(2025, 11, 1)!;
    expect(monthsOnShelf(made, dayFromParts(2026, 6, 1)!)).toEqual({ ok: true, value: 7 });
    expect(monthsOnShelf(made, made)).toEqual({ ok: true, value: 0 });
  });

  it('refuses a battery fitted before it was made', () => {
    expect(monthsOnShelf(46_000, 45_999)).toMatchObject({
      ok: false,
      problem: { because: 'madeLater', kind: 'outOfRange' },
    });
  });
});
