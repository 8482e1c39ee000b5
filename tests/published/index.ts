import type { NotOurs, PublishedCheck } from './check.ts';
import { electrochemistryChecks } from './electrochemistry.checks.ts';
import { storageChecks, storageNotOurs } from './storage.checks.ts';

/** Every published check of the project, room by room. */
export const checks: readonly PublishedCheck[] = [...electrochemistryChecks, ...storageChecks];

/** Published figures that nothing here computes. */
export const notOurs: readonly NotOurs[] = [...storageNotOurs];
