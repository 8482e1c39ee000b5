import type { GivenSettings } from '../../src/inventory/settings.ts';
import { isoDay } from '../../src/basics/calendar.ts';
import { RECORD_START, SITES } from './service.ts';

const sites: GivenSettings['sites'] = Object.fromEntries(
  SITES.map(({ name, coldest, average, heatedStore }) => [name, { coldest, average, heated: heatedStore }]),
);

/** What the planner of the service (fictional) has answered; prices are invented. */
export const demoSettings: GivenSettings = {
  version: 1,
  recordsSince: isoDay(RECORD_START),
  sites,
  years: 3,
  recovered: 0.2,
  stockTarget: 40,
  onOrder: [{ month: '2026-09', count: 60 }],
  money: { currency: 'crowns', unitPrice: 450, rise: 0.025, refund: 18, freight: 9, labour: 35 },
  leadMonths: 3,
  safetyMonths: 1,
};
