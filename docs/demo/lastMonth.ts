import type { Day } from '../../src/basics/calendar.ts';
import { dayFromParts } from '../../src/basics/calendar.ts';
import type { Cells, ColumnKey, DemoCell } from './columns.ts';
import { inStock } from './dirtyRow.ts';
import type { Row } from './register.ts';

/** The day on which last month's file was printed. */
const LAST_MONTH: Day = dayFromParts(2026, 5, 31)!;
/** The station whose file it is. */
const LAST_MONTH_STATION = 'Isvarg Pass';
/** Two batteries that lay here in May lie on this station's shelves now. */
const MOVED_TO = 'Kaldmoor';

const TEST_COLUMNS: readonly ColumnKey[] = [
  'restVolts',
  'temperature',
  'reading',
  'loadVolts',
  'least',
  'testedOn',
  'recharged',
];

/** One station's rows as they stood a month before: less what came since, with what left since. */
export function lastMonthRows(register: readonly Row[]): readonly Row[] {
  const here = register.filter((row) => row.site?.name === LAST_MONTH_STATION && wasThere(row));
  const moved = register
    .filter((row) => row.site?.name === MOVED_TO && inStock(row) && wasThere(row))
    .slice(0, 2);
  return [...here, ...moved].map((row, index) => ({
    ...row,
    cells: { ...asItStood(row.cells), number: index + 1, site: LAST_MONTH_STATION },
  }));
}

const wasThere = ({ stint, battery }: Row): boolean =>
  stint === undefined ? battery!.shelf!.since <= LAST_MONTH : stint.from <= LAST_MONTH;

const isLater = (cell: DemoCell | undefined): boolean =>
  typeof cell === 'object' && 'day' in cell && cell.day > LAST_MONTH && cell.day < LAST_MONTH + 31;

function asItStood(cells: Cells): Cells {
  const then: Cells = { ...cells };
  if (isLater(cells.testedOn)) for (const column of TEST_COLUMNS) delete then[column];
  if (isLater(cells.chargedOn)) delete then.chargedOn;
  if (!isLater(cells.removed)) return then;
  delete then.removed;
  delete then.cause;
  return { ...then, status: 'in use' };
}
