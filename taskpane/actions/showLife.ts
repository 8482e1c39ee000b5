import { answer } from '../../src/basics/outcome.ts';
import type { WarrantyClaim, WarrantyTerms } from '../../src/inventory/warrantyClaims.ts';
import type { Session } from '../session.ts';
import { settingsInForce } from '../session.ts';
import { CLAIMS, LOOKING } from '../text/lifeText.ts';
import { underway } from './underway.ts';

/** Counts how long batteries last from the inventory that was read; nothing is written. */
export async function showLife(session: Session): Promise<void> {
  if (session.reading.value === undefined) return;
  await underway(session, LOOKING, async ({ signal }) => {
    const request = { settings: settingsInForce(session), steady: session.steady.value };
    const life = await session.computing.ask('life', request, signal);
    session.life.value = life.ok ? life.value : undefined;
    return life.ok ? answer(undefined) : life;
  });
}

/** The batteries that failed within their warranty, with the last day to claim; nothing is written. */
export function claimsWithin(
  session: Session,
  terms: WarrantyTerms,
): Promise<readonly WarrantyClaim[] | undefined> {
  return underway(session, CLAIMS.heading, ({ signal }) => session.computing.ask('claims', terms, signal));
}
