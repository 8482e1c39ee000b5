import type { Outcome } from '../../src/basics/outcome.ts';
import { andThen, answer } from '../../src/basics/outcome.ts';
import type { Inventory } from '../../src/inventory/inventory.ts';
import type { WarrantyClaim, WarrantyTerms } from '../../src/inventory/warrantyClaims.ts';
import { warrantyClaims } from '../../src/inventory/warrantyClaims.ts';
import type { Settings } from '../../src/inventory/settings.ts';
import type { OddGroup } from '../../src/life/standsOut.ts';
import type { LifeByGroup } from '../../src/planning/lifeByGroup.ts';
import { lifeByGroup, LIFE_GROUPINGS } from '../../src/planning/lifeByGroup.ts';
import type { PlanLife } from '../../src/planning/lifeFigures.ts';
import type { LifePicture } from '../../src/planning/lifePicture.ts';
import { lifePicture } from '../../src/planning/lifePicture.ts';
import { dueNowRows } from '../../src/planning/lifeRecords.ts';
import type { PastTrial } from '../../src/planning/ownPast.ts';
import { planOwnPast, planStandsOut } from '../../src/planning/planEvidence.ts';
import { planLife } from '../../src/planning/planLife.ts';
import type { SteadyFleet } from '../../src/planning/steadyFleet.ts';
import { steadyFleet } from '../../src/planning/steadyFleet.ts';
import type { Memory } from './memory.ts';

/** What is asked about the life of the batteries that were read last. */
export type LifeRequest = {
  readonly settings: Settings;
  /** The number of vehicles has been about the same for two battery lives: the user says so. */
  readonly steady: boolean;
};

/** How long batteries last here, with everything that speaks for or against believing it. */
export type LifeShown = {
  readonly life: PlanLife;
  readonly picture: LifePicture;
  readonly groups: readonly LifeByGroup[];
  readonly ownPast: readonly PastTrial[];
  readonly standsOut: readonly OddGroup[];
  /** Only where the user says that the fleet is steady. */
  readonly steady?: SteadyFleet;
};

/** The life of the batteries that were read last. */
export function lifeAnswer(memory: Memory, { settings, steady }: LifeRequest): Outcome<LifeShown> {
  const { inventory, asOf } = memory;
  if (inventory === undefined || asOf === undefined) throw new Error('no inventory has been read yet');
  const { batteries, lives } = inventory;
  const { prior } = settings;
  const dueNow = dueNowRows(batteries);
  return andThen(planLife(lives, dueNow, prior), (life) =>
    andThen(lifePicture(batteries, lives, prior), (picture) =>
      andThen(groupsOf(inventory, settings), (groups) =>
        andThen(planOwnPast(lives, asOf, prior), (ownPast) =>
          andThen(steadyOf(inventory, settings, steady), (fleet) =>
            answer({
              ...{ life, picture, groups, ownPast, standsOut: planStandsOut(lives, dueNow) },
              ...(fleet !== undefined && { steady: fleet }),
            }),
          ),
        ),
      ),
    ),
  );
}

function groupsOf({ batteries, lives }: Inventory, { prior }: Settings): Outcome<LifeByGroup[]> {
  const groups: LifeByGroup[] = [];
  for (const by of LIFE_GROUPINGS) {
    const found = lifeByGroup(batteries, lives, prior, by);
    if (!found.ok) return found;
    if (found.value.groups.length > 1) groups.push(found.value);
  }
  return answer(groups);
}

function steadyOf(
  { batteries }: Inventory,
  { prior }: Settings,
  steady: boolean,
): Outcome<SteadyFleet | undefined> {
  return steady ? steadyFleet(batteries, prior) : answer(undefined);
}

/** The batteries that failed within their warranty, with the last day to claim. */
export function claimsAnswer(
  { inventory, asOf }: Memory,
  terms: WarrantyTerms,
): Outcome<readonly WarrantyClaim[]> {
  if (inventory === undefined || asOf === undefined) throw new Error('no inventory has been read yet');
  return warrantyClaims(inventory.lives, terms, asOf);
}
