import { describe, expect, it } from 'vitest';
import { warrantyClaims } from '../../src/inventory/warrantyClaims.ts';
import { refusal, valueOf } from '../electrochemistry/outcomes.ts';
import { AS_OF, day, fleet, inventoryFrom, plain } from './sheets.ts';
import type { Row } from './sheets.ts';

const TERMS = { months: 24, claimDays: 90 };
const out = (serial: string, installed: string, removed: string | number | null, Reason = 'failed'): Row =>
  plain({
    ...{ Serial: serial, Vehicle: `V-${serial}`, Installed: day(installed), 'Date code': '0123-117', Reason },
    Removed: typeof removed === 'string' && /^\d{4}-\d\d-\d\d$/.test(removed) ? day(removed) : removed,
  });

function claims(rows: readonly Row[], terms = TERMS) {
  const { lives } = inventoryFrom([...fleet(4), ...rows], { settings: { recordsSince: '2021-01-01' } });
  return valueOf(warrantyClaims(lives, terms, AS_OF));
}

describe('claims under warranty', () => {
  it('are the failures within the months, with the last day to claim', () => {
    const [one, ...more] = claims([out('A1', '2024-06-15', '2026-05-01')]);
    expect(more).toEqual([]);
    expect(one).toMatchObject({
      failedOn: day('2026-05-01'),
      coveredUntil: day('2026-06-15'),
      claimBy: day('2026-07-30'),
      daysLeft: 30,
    });
  });

  it('end with the day of the warranty, which is no longer covered', () => {
    expect(claims([out('A1', '2024-05-01', '2026-04-30')])).toHaveLength(1);
    expect(claims([out('A1', '2024-05-01', '2026-05-01')])).toEqual([]);
  });

  it('are none for what is in service, or was taken out good', () => {
    expect(claims([out('A1', '2025-05-01', null), out('A2', '2025-05-01', '2026-05-01', 'planned')])).toEqual(
      [],
    );
  });

  it('stand by their last day, those that are too late at the end', () => {
    const rows = [
      out('A1', '2025-01-10', '2025-12-01'),
      out('A2', '2025-01-10', '2026-06-20'),
      out('A3', '2025-01-10', '2026-05-20'),
    ];
    expect(claims(rows).map(({ life, daysLeft }) => [life.serial, daysLeft])).toEqual([
      ['A3', 49],
      ['A2', 80],
      ['A1', day('2025-12-01') + 90 - AS_OF],
    ]);
  });

  it('of a removal known to the month begin with its first day; without any day there is none', () => {
    expect(claims([out('A1', '2025-01-10', '2026-05')])[0]?.claimBy).toBe(day('2026-05-01') + 90);
    const lost = plain({
      ...{ Serial: 'A1', Installed: day('2025-01-10'), Status: 'removed', Removed: null, Reason: 'failed' },
    });
    expect(claims([lost, out('A2', '2025-01-10', '2026-05-20')]).map(({ life }) => life.serial)).toEqual([
      'A2',
    ]);
  });

  it('refuse terms that can not be', () => {
    expect(refusal(warrantyClaims([], { months: 0, claimDays: 90 }, AS_OF))).toEqual([
      'outOfRange',
      'warranty months is 0; allowed are whole numbers from 1 to 240',
    ]);
    expect(refusal(warrantyClaims([], { months: 24, claimDays: 1.5 }, AS_OF))[0]).toBe('outOfRange');
  });
});
