import type { NotOurs, PublishedCheck } from './check.ts';
import { crankingChecks, crankingNotOurs } from './cranking.checks.ts';
import { electrochemistryChecks } from './electrochemistry.checks.ts';
import { labelChecks } from './label.checks.ts';
import { lifeChecks } from './life.checks.ts';
import { planningChecks, planningNotOurs } from './planning.checks.ts';
import { serviceChecks } from './service.checks.ts';
import { storageChecks, storageNotOurs } from './storage.checks.ts';

/** Every published check of the project, room by room. */
export const checks: readonly PublishedCheck[] = [
  ...labelChecks,
  ...serviceChecks,
  ...electrochemistryChecks,
  ...crankingChecks,
  ...storageChecks,
  ...lifeChecks,
  ...planningChecks,
];

/** Published figures that nothing here computes. */
export const notOurs: readonly NotOurs[] = [...crankingNotOurs, ...storageNotOurs, ...planningNotOurs];
