import './inventory.css';
import type { Problem } from '../../../src/basics/outcome.ts';
import { problemText } from '../../../src/basics/problemText.ts';
import { readHere } from '../../actions/readInventory.ts';
import { ViewHelp } from '../../parts/viewHelp.tsx';
import type { Session } from '../../session.ts';
import { VIEW_NAMES } from '../../text/paneText.ts';
import { CellsPart } from './cellsPart.tsx';
import { ChecksPart } from './checksPart.tsx';
import { ColumnsPart } from './columnsPart.tsx';
import { ConstructionPart } from './constructionPart.tsx';
import { FillPart } from './fillPart.tsx';
import { HomePart } from './homePart.tsx';
import { RepairPart } from './repairPart.tsx';
import { SitesPart } from './sitesPart.tsx';
import { StorePart } from '../store/storePart.tsx';
import {
  CANT_READ,
  CANT_READ_NEXT,
  NOTHING_OPEN,
  NOTHING_TO_READ_NEXT,
  WHERE,
} from '../../text/inventoryText.ts';
import { WherePart } from './wherePart.tsx';

/** The inventory as it is: where it stands, how it is read, what is doubtful, and what can be filled from it. */
export function InventoryView({ session }: { readonly session: Session }) {
  return (
    <>
      <h2>{VIEW_NAMES.inventory}</h2>
      <ViewHelp of="inventory" />
      {session.where.value === undefined ? (
        <NothingRead session={session} />
      ) : (
        <>
          <CantRead session={session} />
          <WherePart session={session} />
          <HomePart session={session} />
          <ReadParts session={session} />
        </>
      )}
      <RepairPart session={session} />
    </>
  );
}

function NothingRead({ session }: { readonly session: Session }) {
  return (
    <>
      <p>{NOTHING_OPEN}</p>
      <button type="button" onClick={() => void readHere(session)}>
        {WHERE.first}
      </button>
    </>
  );
}

const isBare = ({ because }: Problem): boolean => because === 'noBatteryRow' || because === 'emptySheet';

function CantRead({ session }: { readonly session: Session }) {
  const problem = session.readProblem.value;
  if (problem === undefined) return null;
  return (
    <div class="cantRead">
      <p>
        {CANT_READ} {problemText(problem)}.
      </p>
      <p>{isBare(problem) ? NOTHING_TO_READ_NEXT : CANT_READ_NEXT}</p>
    </div>
  );
}

function ReadParts({ session }: { readonly session: Session }) {
  if (session.reading.value === undefined) return null;
  return (
    <>
      <ColumnsPart session={session} />
      <ConstructionPart session={session} />
      <SitesPart session={session} />
      <CellsPart session={session} />
      <ChecksPart session={session} />
      <FillPart session={session} />
      <StorePart session={session} />
    </>
  );
}
