import type { Day } from '../basics/calendar.ts';
import type { PlannedUnit } from '../planning/planUnits.ts';
import { fittedWidths } from './columnWidths.ts';
import type { Draft } from './draft.ts';
import { addHeads, addRow, addSentence, cell, finishedSheet, newDraft } from './draft.ts';
import { addShared, LIVE_HEADS, liveCells } from './liveColumns.ts';
import type { ReportFacts } from './reportFacts.ts';
import type { Sheet, SheetCell } from './sheet.ts';
import { fixedBlock } from './sheet.ts';
import { crossingText } from './trendCell.ts';

/** Where the unit list's expected counts stand, for the forecast's check. */
export type UnitsPlace = { readonly sheet: string; readonly column: (year: number) => string };

const HEADS = [
  'Serial',
  'Site',
  'Vehicle',
  'Set',
  'Type',
  'Age (months)',
  'Verdict',
  'Chance in 12 months',
  'Chance in 24 months',
  'Chance in 12 months by test trend',
  'Chance in 24 months by test trend',
];
const LAST_HEADS = ['Proposed fiscal year', 'Tests reach the least accepted in', 'Reason', 'Sheet row'];
// Long texts would shrink the print until nobody can read it: they stand on the sheet only, at the right.
const NOT_PRINTED = 3;
const FIRST_ROW = 3;

/** Where the list of a plan's units will stand on a sheet of that name. */
export function unitsPlace({ plan }: ReportFacts, sheet: string): UnitsPlace {
  const rows = Math.max(1, plan.units.length);
  return {
    sheet,
    column: (year) => fixedBlock({ row: FIRST_ROW, column: HEADS.length + year, rows, columns: 1 }),
  };
}

/** Every place of the plan, the likeliest to fail first, as a table that can be sorted. */
export function unitsSheet(facts: ReportFacts, name: string): Sheet {
  const draft = newDraft();
  const { plan } = facts;
  const own = [...HEADS, ...plan.years.map(({ label }) => `${label} expected`), ...LAST_HEADS];
  const isLive = facts.settings.liveFormulas;
  const heads = isLive ? [...own, ...LIVE_HEADS] : own;
  addSentence(draft, 'Batteries in service, the likeliest to fail first', 'title', own.length - NOT_PRINTED);
  addSentence(
    draft,
    'Expected = batteries that this place is expected to need in that fiscal year, replacements that fail again included. The chances are of this battery alone: of failing by its age and, where its tests show a trend, of a test that reads under the least. The list goes by the worse of the two; counts and money rest on the age alone. Reasons and sheet rows, at the right, are not printed.',
    'note',
    own.length - NOT_PRINTED,
  );
  if (isLive) addShared(draft, facts, own.length);
  addHeads(draft, heads);
  for (const unit of plan.units) {
    const live = isLive ? liveCells(unit, facts, draft.rows.length, own.length) : [];
    addRow(draft, [...unitCells(unit, facts.asOf), ...live]);
  }
  addUnitsTable(draft, heads, plan.units.length);
  return finishedSheet(draft, name, fittedWidths(draft.rows, limits(plan.years.length, isLive)), {
    frozenRows: FIRST_ROW,
    repeatedRows: [FIRST_ROW - 1, FIRST_ROW - 1],
    printedColumns: own.length - NOT_PRINTED,
    dateShown: facts.settings.dateShown,
  });
}

/** Least and most characters of each column. */
function limits(years: number, isLive: boolean): (readonly [number, number])[] {
  const texts = Array.from({ length: 5 }, () => [6, 20] as const);
  const numbers = (length: number) => Array.from({ length }, () => [9, 12] as const);
  const live = isLive ? numbers(LIVE_HEADS.length) : [];
  const own = [...texts, [8, 9], [12, 16], ...numbers(4), ...numbers(years)] as const;
  return [...own, [9, 12], [12, 28], [54, 90], [7, 9], ...live];
}

function unitCells(unit: PlannedUnit, asOf: Day): SheetCell[] {
  const { battery } = unit;
  return [
    ...[battery.serial, battery.site, battery.vehicle, battery.set, battery.type].map((text) => cell(text)),
    cell(battery.ageMonths ?? 'unknown', 'body', 'months'),
    cell(battery.verdict ?? ''),
    cell(unit.chance12 ?? 'due now', 'body', 'chance'),
    cell(unit.chance24 ?? 'due now', 'body', 'chance'),
    cell(unit.trendChance12 ?? '', 'body', 'chance'),
    cell(unit.trendChance24 ?? '', 'body', 'chance'),
    ...unit.expected.map((expected) => cell(expected, 'body', 'thousandths')),
    cell(unit.proposedYear ?? 'later'),
    cell(crossingText(battery, asOf), 'wrapped'),
    cell(reasonFor(unit), 'wrapped'),
    cell(battery.row, 'body', 'plain'),
  ];
}

function reasonFor({ battery, dueNow, ageKnown, proposedYear }: PlannedUnit): string {
  if (dueNow) return `condemned, still in service: ${battery.verdictReason ?? ''}`;
  const age = ageKnown ? 'by its age' : 'age unknown, taken as its type and site';
  if (proposedYear === undefined) return `${age}: more likely good to the plan's end`;
  return `${age}: more likely failed than not by then`;
}

function addUnitsTable(draft: Draft, heads: readonly string[], rows: number): void {
  if (rows > 0) draft.tables.push({ name: 'PlannedUnits', row: FIRST_ROW - 1, column: 0, rows, heads });
}
