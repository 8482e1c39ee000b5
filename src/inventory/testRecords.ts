import type { Day } from '../basics/calendar.ts';
import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer } from '../basics/outcome.ts';
import type { Block } from './block.ts';
import { blockOf } from './block.ts';
import { cellText } from './cells.ts';
import type { Field } from './fields.ts';
import { FIELD_SPECS } from './fields.ts';
import { findHeader } from './findHeader.ts';
import type { Findings } from './findings.ts';
import { newFindings } from './findings.ts';
import { headerWords } from './headerWords.ts';
import type { Finding, SheetRows } from './inventory.ts';
import type { Lines } from './lines.ts';
import { matchColumns } from './matchColumns.ts';
import { readColumns } from './readColumns.ts';
import { rowKinds } from './rowKinds.ts';
import { unitOfHead } from './temperatureColumn.ts';

/** Fields that a sheet of tests and a sheet of charges can hold. */
const RECORD_FIELDS: readonly Field[] = [
  ...(['serial', 'damage', 'restVolts', 'temperature', 'reading', 'loadVolts', 'least', 'retest'] as const),
  ...(['testedOn', 'chargedOn', 'vehicle', 'place'] as const),
];

/** The rows of a sheet of tests or charges by serial, in the order of their dates; a date keeps its time of day. */
export type Records = {
  readonly lines: Lines;
  /** Lines of each serial, the earliest first. */
  readonly of: ReadonlyMap<string, readonly number[]>;
  /** Moment of each line: day and, where the sheet has it, time of day. */
  readonly at: Float64Array;
  readonly findings: Findings;
};

/** How a sheet of records is read. */
export type RecordsJob = {
  readonly asOf: Day;
  readonly dateField: 'testedOn' | 'chargedOn';
  readonly temperatureUnit: 'C' | 'F' | undefined;
  readonly dateOrder: 'dayFirst' | 'monthFirst' | undefined;
  readonly knows: (serial: string) => boolean;
};

/** Reads a sheet of tests or charges. A sheet that holds nothing yet gives no records. */
export function readRecords(sheet: SheetRows, job: RecordsJob): Outcome<Records | undefined> {
  const block = blockOf(sheet);
  if (block.rows.length < 2) return answer(undefined);
  return andThen(findHeader(block, undefined, sheet.name ?? job.dateField, 1), (header) =>
    andThen(matchColumns(block, header, namedColumns(header.texts, job), job.asOf), ({ at }) => {
      const findings = newFindings(sheet.name ?? (job.dateField === 'testedOn' ? 'Tests' : 'Charges'));
      const kinds = rowKinds(block, header, at, () => false);
      // A unit in the sheet's own head goes before the setting, which is about the inventory's column.
      const temperatureUnit = unitOfHead(header.texts[at.get('temperature') ?? -1]) ?? job.temperatureUnit;
      const heads = header.texts;
      const context = { ...job, temperatureUnit, findings, block, kept: kinds.batteries, at, heads };
      const lines = readColumns({ ...context, ...knowledgeOf(sheet) });
      const isNotFull = notFull(block, kinds.batteries, header.texts);
      return answer(bySerial(lines, block, kinds.batteries, isNotFull, findings, job));
    }),
  );
}

const knowledgeOf = (sheet: SheetRows) => ({
  from1904: sheet.from1904 === true,
  knowsDateCells: sheet.isDateCell !== undefined,
  fromText: sheet.fromText === true,
});

// The sheet's plain "Date" is that of the test or the charge; columns that mean something else here are passed over.
function namedColumns(texts: readonly string[], { dateField }: RecordsJob): Partial<Record<Field, string>> {
  const named: Partial<Record<Field, string>> = {};
  for (const field of Object.keys(FIELD_SPECS) as Field[])
    if (!RECORD_FIELDS.includes(field)) named[field] = '';
  const date = texts.find((text) =>
    /^(date|date and time|when|on|day|(test|charge) date)$/.test(headerWords(text)),
  );
  if (date !== undefined) named[dateField] = date;
  named[dateField === 'testedOn' ? 'chargedOn' : 'testedOn'] = '';
  return named;
}

function bySerial(
  lines: Lines,
  block: Block,
  kept: readonly number[],
  isNotFull: (line: number) => boolean,
  findings: Findings,
  job: RecordsJob,
): Records {
  const serials = lines.text('serial');
  const days = lines.date(job.dateField).first;
  const at = Float64Array.from(
    days,
    (day, line) => day + timeOfDay(block.rows[kept[line]!]![lines.at.get(job.dateField) ?? -1]),
  );
  const of = new Map<string, number[]>();
  serials.forEach((serial, line) => {
    const why = unusable(serial, at[line]!, job) ?? (isNotFull(line) ? 'charge not full' : undefined);
    if (why !== undefined)
      findings.add(lines.rows[line]!, {
        column: lines.head('serial'),
        given: serial === '' ? 'no serial' : serial,
        kind: why,
      });
    else of.set(serial, [...(of.get(serial) ?? []), line]);
  });
  for (const ofSerial of of.values()) ofSerial.sort((a, b) => at[a]! - at[b]!);
  return { lines, of, at, findings };
}

const timeOfDay = (cell: unknown): number => (typeof cell === 'number' && cell < 100_000 ? cell % 1 : 0);

const FULL = /^(full|fully charged|full charge|charged full|complete|completed)$/;

// A charge that was broken off is none: the column that says so, where there is one.
function notFull(block: Block, kept: readonly number[], heads: readonly string[]): (line: number) => boolean {
  const column = heads.findIndex((head) => FULL.test(headerWords(head)));
  return (line) => column >= 0 && /^(n|no|false|0)$/i.test(cellText(block.rows[kept[line]!]![column]));
}

function unusable(serial: string, at: number, { asOf, knows }: RecordsJob): Finding['kind'] | undefined {
  if (serial === '' || Number.isNaN(at)) return 'row without serial or date';
  if (at >= asOf + 1) return 'date later than as-of';
  return knows(serial) ? undefined : 'serial not in the inventory';
}
