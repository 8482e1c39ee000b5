import { dayFromParts } from '../../src/basics/calendar.ts';
import { fiscalPeriod } from '../../src/service/fiscalPeriod.ts';
import type { PublishedCheck } from './check.ts';
import { valueOf } from './check.ts';

/** Ages and fiscal years beside what others print. */
export const serviceChecks: readonly PublishedCheck[] = [
  {
    id: 'B1',
    quantity: 'fiscal year of a date',
    source: 'fiscalYearNaming',
    where: 'named by the year in which it ends',
    given: '2025-10-01, year from 1 October',
    expected: 'FY2026',
    ours: () => valueOf(fiscalPeriod(dayFromParts(2025, 10, 1)!, 10)),
  },
];
