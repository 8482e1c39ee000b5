import { addAsks, addFunding } from './askBlocks.ts';
import { addAssumptions, addHead } from './assumptions.ts';
import { addCharts } from './chartBlock.ts';
import type { Draft } from './draft.ts';
import { addGap, addPageBreak, addRow, cell, finishedSheet, formula, newDraft } from './draft.ts';
import { addMethod } from './methodBlock.ts';
import { addParts, addTimes } from './partBlocks.ts';
import type { ReportFacts } from './reportFacts.ts';
import type { Sheet } from './sheet.ts';
import { address, quotedSheet } from './sheet.ts';
import type { UnitsPlace } from './unitsSheet.ts';
import type { YearBlock } from './yearBlocks.ts';
import { addYearMoney, addYearUnits } from './yearBlocks.ts';

const COLUMNS = 20;
const WIDTHS = [24, 11, 11, 11, 11, 10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 11, 11, 14, 10, 10];

/**
 * The sheet that the budget holder receives: assumptions that can be changed, batteries and money by fiscal year
 * with live formulas, by site, type, quarter and month, and how it was made.
 * @param facts  the plan and what is to be said about it
 * @param name   name of the sheet
 * @param units  where the unit list stands, for the check
 */
export function forecastSheet(facts: ReportFacts, name: string, units: UnitsPlace): Sheet {
  const draft = newDraft();
  addHead(draft, facts, COLUMNS);
  addAssumptions(draft, facts, COLUMNS);
  const years = addYearUnits(draft, facts, COLUMNS);
  addCheck(draft, facts, years, units);
  const money = addYearMoney(draft, facts, years, COLUMNS);
  addAsks(draft, facts, years, COLUMNS);
  const { plan } = facts;
  addPageBreak(draft);
  addParts(draft, 'By site', plan.sites, plan, COLUMNS);
  addParts(draft, 'By type', plan.types, plan, COLUMNS);
  addTimes(draft, 'By fiscal quarter', plan.quarters, COLUMNS);
  addPageBreak(draft);
  const months = addTimes(draft, 'By month', plan.months, COLUMNS);
  addCharts(draft, months, { ...money, column: 0, columns: 8 }, plan.settings.money.currency);
  addPageBreak(draft);
  addFunding(draft, facts, COLUMNS);
  addMethod(draft, facts, COLUMNS);
  return finishedSheet(draft, name, WIDTHS, { frozenRows: 0 });
}

// The reader's proof that the list of batteries and the totals are one and the same plan.
function addCheck(draft: Draft, { plan }: ReportFacts, years: YearBlock, units: UnitsPlace): void {
  const totals = address(years.row + years.rows, 4);
  const listed = plan.years.map((_, y) => `SUM(${quotedSheet(units.sheet)}!${units.column(y)})`).join('+');
  const same = `ABS(${totals}-(${listed}))<0.05`;
  const text = `IF(${same},"agrees with the unit list","DOES NOT AGREE with the unit list")`;
  addRow(draft, [
    cell('Check of expected failures', 'label'),
    null,
    null,
    formula(text, 'agrees with the unit list', 'text', 'total'),
  ]);
  addGap(draft);
}
