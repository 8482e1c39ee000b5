import type { Outcome } from '../../src/basics/outcome.ts';
import { andThen, answer } from '../../src/basics/outcome.ts';
import { blockOf } from '../../src/inventory/block.ts';
import type { Field } from '../../src/inventory/fields.ts';
import type { Inventory } from '../../src/inventory/inventory.ts';
import { dueNowRows } from '../../src/planning/lifeRecords.ts';
import { planLife } from '../../src/planning/planLife.ts';
import { isCellError } from '../../functions/cell.ts';
import type { FillKey } from '../fill/columns.ts';
import { FILL_SPECS, WHY_HEAD } from '../fill/columns.ts';
import { evaluated } from '../fill/evaluate.ts';
import type { Expression } from '../fill/expression.ts';
import type { FillFacts } from '../fill/expressions.ts';
import { expressionFor } from '../fill/expressions.ts';
import type { FillPlace } from '../fill/formulas.ts';
import { placedFormula } from '../fill/formulas.ts';
import { appliesTo, valueFor, whyNot } from '../fill/values.ts';
import type { FilledColumn, HostCell } from '../host/sheetHost.ts';
import type { Memory } from './memory.ts';

/** What columns are asked for. */
export type FillAsked = {
  readonly keys: readonly FillKey[];
  /** Where live formulas stand; undefined = values. */
  readonly live: FillPlace | undefined;
  /** Whether a row without an answer says why in a column of its own, or shows the error in its place. */
  readonly problems: 'why' | 'error';
};

/** Columns as the host takes them, and the keys that had to be given as values all the same. */
export type FillAnswer = {
  readonly columns: readonly FilledColumn[];
  readonly rows: number;
  readonly asValues: readonly FillKey[];
  /** Columns of live formulas with rows that only values would answer, such as dates written as text. */
  readonly onlyAsValues: readonly { readonly head: string; readonly rows: number }[];
};

type Job = {
  readonly memory: Required<Pick<Memory, 'inventory' | 'sheet' | 'asOf' | 'settings'>>;
  readonly facts: FillFacts;
  readonly asked: FillAsked;
};

/** The chosen columns for the inventory that was read: formulas, or values in the order of the sheet's rows. */
export function fillAnswer(memory: Memory, asked: FillAsked): Outcome<FillAnswer> {
  const { inventory, sheet, asOf, settings } = memory;
  if (inventory === undefined || sheet === undefined || asOf === undefined || settings === undefined)
    throw new Error('no inventory has been read yet');
  return andThen(lifeOf(memory, asked.keys), (life) => {
    const { layouts, constructions } = inventory;
    const columns = withoutOwn(inventory.columns, asked.keys);
    const facts = { columns, layouts, constructions, settings, life };
    return answer(filled({ memory: { inventory, sheet, asOf, settings }, facts, asked }));
  });
}

// A column that was filled before must not be what it is filled from.
function withoutOwn(columns: Inventory['columns'], keys: readonly FillKey[]): Inventory['columns'] {
  const own = new Set(keys.map((key) => FILL_SPECS[key].head));
  return Object.fromEntries(Object.entries(columns).filter(([, head]) => !own.has(head)));
}

function lifeOf({ inventory, plan, settings }: Memory, keys: readonly FillKey[]): Outcome<FillFacts['life']> {
  if (!keys.includes('chance12')) return answer<FillFacts['life']>(undefined);
  if (plan !== undefined) return answer<FillFacts['life']>(plan.life);
  const { batteries, lives } = inventory!;
  return planLife(lives, dueNowRows(batteries), settings!.prior);
}

function filled(job: Job): FillAnswer {
  const { keys, live, problems } = job.asked;
  const rows = rowCount(job.memory.inventory);
  const why: string[] = new Array(rows).fill('');
  const asValues: FillKey[] = [];
  const onlyAsValues: { head: string; rows: number }[] = [];
  const columns = keys.map((key): FilledColumn => {
    const { head, format } = FILL_SPECS[key];
    const expression = live === undefined ? undefined : expressionFor(key, job.facts);
    const formula = expression && placedFormula(expression, live!, problems);
    if (expression !== undefined && formula !== undefined) {
      const errors = formulaErrors(expression, job);
      if (problems === 'why') errors.forEach((message, row) => add(why, row, `${head}: ${message}`));
      const lost = answeredAsValues(key, errors, job);
      if (lost > 0) onlyAsValues.push({ head, rows: lost });
      return { head, format, formula };
    }
    if (live !== undefined) asValues.push(key);
    return { head, format, values: valuesOf(key, job, why) };
  });
  if (problems === 'error' || why.every((text) => text === ''))
    return { columns, rows, asValues, onlyAsValues };
  return {
    columns: [...columns, { head: WHY_HEAD, format: 'text', values: why }],
    rows,
    asValues,
    onlyAsValues,
  };
}

const rowCount = ({ parts }: Inventory): number => parts.dataRows[1] - parts.dataRows[0] + 1;

// What a live formula can't say: the sentences that its errors would have, by row.
function formulaErrors(expression: Expression, { memory }: Job): ReadonlyMap<number, string> {
  const block = blockOf(memory.sheet);
  const at = new Map(memory.inventory.parts.columns.map(({ field, column }) => [field, column]));
  const first = memory.inventory.parts.dataRows[0] - block.rowNumber(0);
  const cell = (field: Field, row: number): unknown => withMessage(block.rows[first + row]?.[at.get(field)!]);
  const answers = evaluated(expression, { rows: rowCount(memory.inventory), asOf: memory.asOf, cell });
  const batteries = new Set(
    memory.inventory.batteries.map(({ row }) => row - memory.inventory.parts.dataRows[0]),
  );
  const errors = new Map<number, string>();
  answers.forEach((given, row) => {
    if (isCellError(given) && batteries.has(row)) errors.set(row, String(given.message));
  });
  return errors;
}

function answeredAsValues(key: FillKey, errors: ReadonlyMap<number, string>, { memory, facts }: Job): number {
  const { batteries, parts } = memory.inventory;
  return batteries.filter(
    (battery) =>
      errors.has(battery.row - parts.dataRows[0]) &&
      valueFor(key, battery, { asOf: memory.asOf, life: facts.life }) !== undefined,
  ).length;
}

const withMessage = (cell: unknown): unknown =>
  typeof cell === 'object' && cell !== null ? { message: 'the cell shows an error', ...cell } : cell;

function valuesOf(key: FillKey, { memory, facts, asked }: Job, why: string[]): HostCell[] {
  const { inventory, asOf } = memory;
  const values: HostCell[] = new Array(why.length).fill(null);
  const findings = findingsByRow(inventory.toCheck);
  const heads = headsOf(inventory);
  for (const battery of inventory.batteries) {
    const row = battery.row - inventory.parts.dataRows[0];
    const value = valueFor(key, battery, { asOf, life: facts.life });
    if (value !== undefined) values[row] = value;
    else if (appliesTo(key, battery)) {
      const reason = whyNot(key, findings.get(battery.row) ?? [], heads);
      if (reason === '') continue;
      if (asked.problems === 'error') values[row] = { error: '#N/A', message: reason };
      else add(why, row, reason);
    }
  }
  return values;
}

function findingsByRow(findings: Inventory['toCheck']): ReadonlyMap<number, Inventory['toCheck'][number][]> {
  const rows = new Map<number, Inventory['toCheck'][number][]>();
  for (const finding of findings) {
    if (finding.sheet !== undefined) continue;
    const known = rows.get(finding.row);
    if (known === undefined) rows.set(finding.row, [finding]);
    else known.push(finding);
  }
  return rows;
}

// Which columns of the sheet each answer rests on, by their heads.
function headsOf({ columns }: Inventory): ReadonlyMap<string, FillKey[]> {
  const heads = new Map<string, FillKey[]>();
  for (const [key, fields] of Object.entries(RESTS_ON) as [FillKey, readonly Field[]][]) {
    for (const field of fields) {
      const head = columns[field];
      if (head !== undefined) heads.set(head, [...(heads.get(head) ?? []), key]);
    }
  }
  return heads;
}

const TESTED: readonly Field[] = ['restVolts', 'reading', 'loadVolts', 'least', 'testedOn', 'temperature'];

const RESTS_ON: Readonly<Record<FillKey, readonly Field[]>> = {
  made: ['code', 'made'],
  lot: ['code', 'lot'],
  monthsInService: ['installed', 'removed'],
  monthsOnShelf: ['code', 'made', 'installed'],
  charge: ['restVolts', 'temperature', 'testedOn'],
  verdict: TESTED,
  reason: TESTED,
  chargeBy: ['chargedOn'],
  chance12: ['installed'],
};

const add = (why: string[], row: number, text: string): void => {
  if (why[row]!.includes(text)) return;
  why[row] = why[row] === '' ? text : `${why[row]}; ${text}`;
};
