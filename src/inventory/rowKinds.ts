import type { Block } from './block.ts';
import { cellText, isBlank } from './cells.ts';
import type { Field } from './fields.ts';
import type { Header } from './findHeader.ts';
import type { Cell } from './inventory.ts';

/** Why a row is left out: it is no battery. */
export type NoBattery =
  | 'blank row'
  | 'repeated header'
  | 'total or subtotal'
  | 'heading or note'
  | 'no battery in the row'
  | 'hidden or filtered row'
  | 'the same life twice';

/** The rows under a header, told apart. */
export type RowKinds = {
  /** Block indices of the rows that are batteries. */
  readonly batteries: readonly number[];
  /** The site that a heading above each of them names; empty where none does. */
  readonly headings: readonly string[];
  readonly leftOut: ReadonlyMap<NoBattery, number>;
  readonly read: number;
};

const TOTAL =
  /^(grand[ -]*|sub[ -]*)?totals?\b|\b(sub[ -]?)?totals?\s*:?$|^(sum|average|no\.? of batteries|number of batteries)\b|\bcount$/i;
const EMPTY_PLACE = /^(empty|vacant|no battery|none fitted|not fitted|nil fitted|no batt)\.?$/i;
const SITE_LABEL = /^(site|depot|location|station|base|garage|yard|workshop|unit|region)\s*[:–-]?\s*/i;

/** A row with one of these filled is a battery. */
const FACTS: readonly Field[] = [
  ...([
    'serial',
    'code',
    'made',
    'lot',
    'installed',
    'removed',
    'restVolts',
    'reading',
    'loadVolts',
  ] as const),
  ...(['testedOn', 'chargedOn', 'type', 'stockNumber', 'part', 'maker', 'status', 'cause'] as const),
];

type Shape = {
  readonly block: Block;
  readonly header: Header;
  readonly serial: number;
  readonly facts: readonly number[];
  /** Columns where a lone text is no heading: an empty place keeps its vehicle. */
  readonly places: ReadonlySet<number>;
  readonly serialsHaveBlanks: boolean;
};

/**
 * The rows under a header told apart: batteries, and blank rows, repeated headers, totals, headings, empty places.
 * @param isLeftOut  tells whether a row (the sheet's own number) is left out for being hidden
 */
export function rowKinds(
  block: Block,
  header: Header,
  at: ReadonlyMap<Field, number>,
  isLeftOut: (row: number) => boolean,
): RowKinds {
  const shape = shapeOf(block, header, at);
  const [batteries, headings] = [[] as number[], [] as string[]];
  const leftOut = new Map<NoBattery, number>();
  let heading = '';
  for (let index = header.dataFrom; index < block.rows.length; index += 1) {
    const row = block.rows[index]!;
    const reason =
      reasonOf(row, shape) ?? (isLeftOut(block.rowNumber(index)) ? 'hidden or filtered row' : undefined);
    if (reason === 'heading or note') heading = siteOf(row);
    if (reason !== undefined) leftOut.set(reason, (leftOut.get(reason) ?? 0) + 1);
    else {
      batteries.push(index);
      headings.push(heading);
    }
  }
  return {
    batteries,
    headings,
    leftOut,
    read: Math.max(0, block.rows.length - header.dataFrom),
  };
}

function shapeOf(block: Block, header: Header, at: ReadonlyMap<Field, number>): Shape {
  const columns = (fields: readonly Field[]): number[] => fields.flatMap((field) => at.get(field) ?? []);
  const serial = at.get('serial') ?? -1;
  const sample = block.rows.slice(header.dataFrom, header.dataFrom + 200).map((row) => cellText(row[serial]));
  const withBlanks = sample.filter((text) => /\d/.test(text) && /\s/.test(text)).length;
  return {
    block,
    header,
    serial,
    facts: columns(FACTS),
    places: new Set(columns(['vehicle', 'place', 'set', 'storagePlace'])),
    serialsHaveBlanks: withBlanks > sample.length / 5,
  };
}

function reasonOf(row: readonly Cell[], shape: Shape): NoBattery | undefined {
  const first = row.findIndex((cell) => !isBlank(cell));
  if (first < 0) return 'blank row';
  const serial = row[shape.serial];
  const noSerial = isBlank(serial);
  if ((noSerial || first === shape.serial) && isTotal(row, first, shape)) return 'total or subtotal';
  if (first < shape.serial && isCountOfSerials(row, first)) return 'total or subtotal';
  if (isRepeatedHeader(row, shape)) return 'repeated header';
  if (isHeading(row, first, shape)) return 'heading or note';
  if (!noSerial) return EMPTY_PLACE.test(cellText(serial)) ? 'no battery in the row' : undefined;
  return shape.facts.some((column) => !isBlank(row[column])) ? undefined : 'no battery in the row';
}

function isTotal(row: readonly Cell[], first: number, shape: Shape): boolean {
  if (first === shape.serial) return TOTAL.test(cellText(row[first])) && !/\d/.test(cellText(row[first]));
  return row.some((cell) => typeof cell === 'string' && cell.length <= 60 && TOTAL.test(cell.trim()));
}

/** A word for a total with nothing but numbers after it: the one under the serials is their count. */
function isCountOfSerials(row: readonly Cell[], first: number): boolean {
  const after = row.slice(first + 1).filter((cell) => !isBlank(cell));
  return TOTAL.test(cellText(row[first])) && after.every((cell) => typeof cell === 'number');
}

function isRepeatedHeader(row: readonly Cell[], { block, header }: Shape): boolean {
  const heads = block.rows[header.last]!;
  const text = heads.findIndex((head) => !isBlank(head));
  if (text < 0 || cellText(row[text]) !== cellText(heads[text])) return false;
  const named = heads.reduce<number>((sum, head) => (isBlank(head) ? sum : sum + 1), 0);
  const same = heads.filter(
    (head, column) => !isBlank(head) && cellText(row[column]) === cellText(head),
  ).length;
  return same >= 2 && same > named / 2;
}

function isHeading(row: readonly Cell[], first: number, shape: Shape): boolean {
  const filled = row.reduce<number>((sum, cell) => (isBlank(cell) ? sum : sum + 1), 0);
  if (filled > 2) return false;
  const text = cellText(row[first]);
  if (filled === 2) return SITE_LABEL.test(text) && text.replace(SITE_LABEL, '') === '';
  if (typeof row[first] !== 'string' || shape.places.has(first)) return false;
  if (first !== shape.serial) return true;
  return !/\d/.test(text) || SITE_LABEL.test(text) || (/\s/.test(text) && !shape.serialsHaveBlanks);
}

function siteOf(row: readonly Cell[]): string {
  const texts = row.filter((cell) => !isBlank(cell)).map(cellText);
  const text = texts.length > 1 ? texts[1]! : texts[0]!.replace(/^[^:]*:\s*(?=\S)/, '');
  return text
    .replace(/\s*\(\d+( batteries)?\)\s*$/i, '')
    .replace(/\s*:$/, '')
    .trim();
}
