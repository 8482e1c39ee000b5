import type { Day } from '../basics/calendar.ts';
import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer, problem } from '../basics/outcome.ts';
import type { Block } from './block.ts';
import { blockOf } from './block.ts';
import type { Field } from './fields.ts';
import { FIELDS } from './fields.ts';
import type { Header } from './findHeader.ts';
import { findHeader } from './findHeader.ts';
import { newFindings } from './findings.ts';
import { fleetOf } from './fleet.ts';
import type { Inventory, SheetRows } from './inventory.ts';
import type { Lines, ReadContext } from './lines.ts';
import { headOf } from './lines.ts';
import type { ColumnMatch } from './matchColumns.ts';
import { labelsOf, matchColumns, TELLING_FIELDS } from './matchColumns.ts';
import { readColumns } from './readColumns.ts';
import type { RowKinds } from './rowKinds.ts';
import { rowKinds } from './rowKinds.ts';
import type { Settings } from './settings.ts';
import { byEffect } from './rowsToCheck.ts';
import { siteNames } from './siteNames.ts';
import { sheetParts } from './sheetParts.ts';
import { sheetFindings } from './sheetFindings.ts';

/** What an inventory is read from. */
export type InventoryRequest = {
  readonly sheet: SheetRows;
  /** The workbook's sheets of tests and charges, where it has them. */
  readonly tests?: SheetRows;
  readonly charges?: SheetRows;
  readonly asOf: Day;
  readonly settings: Settings;
};

/** A sheet taken apart: where its header is, which column is which, which rows are batteries. */
export type SheetReading = {
  readonly block: Block;
  readonly header: Header;
  readonly match: ColumnMatch;
  readonly kinds: RowKinds;
  readonly context: ReadContext;
  readonly lines: Lines;
};

/**
 * An inventory as a sheet's rows tell it: batteries, lives, counts and everything that should be looked at. Every row
 * is used, used with a stated repair, planned as "age unknown", or left out with a reason because it is no battery.
 * Nothing in the sheet is changed, and nothing doubtful passes without a finding.
 * @param request  the sheet, those of tests and charges, as-of, settings
 * @returns columns, batteries, lives, counts, findings, removal causes, record start, layouts of codes, notes
 * @problem missing        when the sheet is empty or has no row that is a battery
 * @problem notEnoughData  when no header row or no telling column is recognised
 * @problem badInput       when the settings name a header that the sheet does not have
 * @problem outOfRange     when the settings name a header row outside the sheet
 */
export function readInventory(request: InventoryRequest): Outcome<Inventory> {
  const { sheet, settings, asOf } = request;
  const block = blockOf(sheet);
  const name = sheet.name ?? 'inventory';
  if (block.rows.length === 0) return problem('missing', 'emptySheet', 'sheet', name);
  return andThen(findHeader(block, settings.headerRow, name), (header) =>
    andThen(matchColumns(block, header, settings.columns, asOf), (match) => {
      if (!TELLING_FIELDS.some((field) => match.at.has(field))) return noColumn(name);
      const reading = readSheet(request, block, header, match);
      if (reading.lines.count === 0) return problem('missing', 'noBatteryRow', 'sheet', name);
      return answer(inventoryOf(request, reading));
    }),
  );
}

const noColumn = (name: string): Outcome<never> =>
  problem('notEnoughData', 'noBatteryColumn', 'sheet', name, { more: { looked: labelsOf(TELLING_FIELDS) } });

function readSheet(
  { sheet, settings, asOf }: InventoryRequest,
  block: Block,
  header: Header,
  match: ColumnMatch,
): SheetReading {
  const hidden = (row: number): boolean => settings.visibleOnly && sheet.hiddenRows?.has(row) === true;
  const kinds = rowKinds(block, header, match.at, hidden);
  const context: ReadContext = {
    ...{ asOf, findings: newFindings(), block, kept: kinds.batteries, at: match.at, heads: header.texts },
    from1904: sheet.from1904 === true,
    knowsDateCells: sheet.isDateCell !== undefined,
    fromText: sheet.fromText === true,
    dateOrder: settings.dateOrder,
    temperatureUnit: settings.temperatureUnit,
  };
  return { block, header, match, kinds, context, lines: readColumns(context) };
}

function inventoryOf(request: InventoryRequest, reading: SheetReading): Inventory {
  const { context, kinds, lines } = reading;
  sheetFindings(request, reading);
  const sites = siteNames(headingSites(reading), lines, context.findings);
  const fleet = fleetOf(request, lines, sites, context.findings);
  const leftOut = Object.fromEntries(kinds.leftOut) as Record<string, number>;
  if (fleet.twice > 0) leftOut['the same life twice'] = fleet.twice;
  const out = Object.values(leftOut).reduce((sum, count) => sum + count, 0);
  return {
    columns: columnsOf(context),
    batteries: fleet.batteries,
    lives: fleet.lives,
    rows: { read: kinds.read, ...fleet.counts, leftOut: out },
    leftOutReasons: leftOut,
    toCheck: byEffect([...context.findings.list, ...fleet.otherFindings]),
    causes: fleet.causes,
    recordStart: fleet.recordStart,
    layouts: fleet.layouts,
    layoutMeanings: fleet.layoutMeanings,
    constructions: fleet.constructions,
    parts: sheetParts(reading.block, reading.header, reading.match, kinds, request.settings.columns),
    notes: [...notesOf(request, reading), ...fleet.notes],
  };
}

// The site of each row: its own cell, else the heading above it.
function headingSites({ lines, kinds }: SheetReading): readonly string[] {
  return lines.text('site').map((site, line) => site || kinds.headings[line]!);
}

function columnsOf(context: ReadContext): Readonly<Partial<Record<Field, string>>> {
  const named = FIELDS.filter((field) => context.at.has(field));
  return Object.fromEntries(named.map((field) => [field, headOf(context, field)]));
}

function notesOf({ sheet }: InventoryRequest, { kinds, match, header, lines }: SheetReading): string[] {
  const notes: string[] = [];
  const own = lines.text('site');
  const headings = [...new Set(kinds.headings.filter((heading, line) => heading !== '' && own[line] === ''))];
  if (headings.length > 0)
    notes.push(`headings taken as sites of the rows under them: ${headings.join(', ')}`);
  for (const { field, column } of match.refused)
    notes.push(
      `the column ${header.texts[column]} is not taken as ${labelsOf([field])}: its cells don't look like it`,
    );
  const unused = unusedHeaders(header, match);
  if (unused.length > 0) notes.push(`columns not used: ${unused.join(', ')}`);
  if (sheet.from1904 === true)
    notes.push('the workbook counts its days from 1904; its dates were converted on reading');
  return notes;
}

function unusedHeaders({ texts }: Header, { at, refused, rivals }: ColumnMatch): readonly string[] {
  const told = [...at.values(), ...refused.map(({ column }) => column), ...rivals.map(({ other }) => other)];
  return texts.filter((text, column) => text !== '' && !told.includes(column));
}
