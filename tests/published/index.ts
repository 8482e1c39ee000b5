import type { NotOurs, PublishedCheck } from './check.ts';

/** Every published check of the project, room by room. */
export const checks: readonly PublishedCheck[] = [];

/** Published figures that nothing here computes. */
export const notOurs: readonly NotOurs[] = [];
