import { answer, problem } from '../../src/basics/outcome.ts';
import type { Session } from '../session.ts';
import { READING_PICTURE } from '../text/benchText.ts';
import { giveIdentity, identify } from './bench.ts';
import { underway } from './underway.ts';

/** Takes the serial of the row in which the user stands in the inventory's sheet. @returns whether there was one */
export async function takeSelectedRow(session: Session): Promise<boolean> {
  const serial = await underway(session, READING_PICTURE.row, async () => {
    const info = await session.host.workbook();
    if (!info.ok) return info;
    const { selected } = info.value;
    const where = session.where.value;
    if (selected === undefined || where === undefined || selected.sheet !== where.sheet)
      return problem('missing', 'noRowSelected', 'row');
    const found = await session.computing.ask('serialOfRow', selected.block.row + 1);
    return found === undefined ? problem('missing', 'noRowSelected', 'row') : answer(found);
  });
  if (serial !== undefined) await take(session, serial);
  return serial !== undefined;
}

/** Reads the symbol in a picture and takes its text as if it had been scanned. @returns whether there was one */
export async function readPicture(session: Session, picture: File | undefined): Promise<boolean> {
  if (picture === undefined) return false;
  const read = await underway(session, READING_PICTURE.symbol, async ({ signal }) => {
    if (picture.size > MOST_BYTES)
      return problem('outOfRange', 'pictureTooManyBytes', 'the picture', picture.size, {
        limits: [1, MOST_BYTES / 1e6],
      });
    const bytes = new Uint8Array(await picture.arrayBuffer());
    return session.computing.ask('symbol', bytes, signal);
  });
  if (read !== undefined) await take(session, read.text);
  return read !== undefined;
}

/** Larger files are refused before they are read. */
const MOST_BYTES = 20_000_000;

async function take(session: Session, identity: string): Promise<void> {
  giveIdentity(session, identity);
  await identify(session);
}
