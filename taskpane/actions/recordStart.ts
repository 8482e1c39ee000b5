import type { Problem } from '../../src/basics/outcome.ts';
import { recordsAfter } from '../recordsAfter.ts';
import type { Session } from '../session.ts';
import { giveSetting } from './giveSetting.ts';
import { readAgain } from './readInventory.ts';

/** Whether it still has to be asked since when every removal is written down. */
export function recordStartOpen({ settings, reading }: Session): boolean {
  const told = settings.value.ok && settings.value.value.recordsSince !== undefined;
  return !told && reading.value?.recordStart.from !== 'column';
}

/**
 * Takes since when every removal is written down, and counts the inventory anew with it.
 * @param since  a date as text, `never` or `unknown`
 * @returns what is wrong with it, or undefined
 */
export function giveRecordStart(session: Session, since: string): Problem | undefined {
  const late = recordsAfter(since, session.asOf.value);
  if (late?.ok === false) return late.problem;
  const refused = giveSetting(session, 'recordsSince', since);
  if (refused === undefined) void readAgain(session);
  return refused;
}
