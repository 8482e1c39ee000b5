import { addAsks, fillAsks } from './askBlock.ts';
import { addAssumptions } from './assumptions.ts';
import { addChartRoom, addCharts } from './chartBlock.ts';
import { fittedWidths } from './columnWidths.ts';
import { addCounts } from './countsBlock.ts';
import type { Draft } from './draft.ts';
import {
  addGap,
  addPageBreak,
  addRow,
  cell,
  finishedSheet,
  formula,
  keepTogether,
  newDraft,
} from './draft.ts';
import { addFunding, addFundingTable, fillFunding } from './fundingBlock.ts';
import { addHead } from './headBlock.ts';
import { addMethod } from './methodBlock.ts';
import { addMoney } from './moneyBlock.ts';
import { addOrders } from './ordersBlock.ts';
import { addParts, addTimes } from './partBlocks.ts';
import type { ReportFacts } from './reportFacts.ts';
import { addRequest, fillRequest } from './requestBlock.ts';
import type { Sheet } from './sheet.ts';
import { address, quotedSheet } from './sheet.ts';
import type { UnitsPlace } from './unitsSheet.ts';
import type { YearBlock, YearBlocks } from './yearBlock.ts';
import { countedWord, COUNTS } from './yearBlock.ts';

const COLUMNS = 12;

/** Least and most characters of a column: names in the first, numbers in the others. */
const WIDTHS = Array.from({ length: COLUMNS }, (_, column): readonly [number, number] =>
  column === 0 ? [20, 26] : [11, 17],
);

/**
 * The sheet that the budget holder receives: the request, assumptions that can be changed, batteries and money by
 * fiscal year with live formulas, by site, type, quarter and month, and how it was made.
 * @param facts  the plan and what is to be said about it
 * @param name   name of the sheet
 * @param units  where the unit list stands, for the check
 */
export function forecastSheet(facts: ReportFacts, name: string, units: UnitsPlace): Sheet {
  const draft = newDraft();
  const front = addFront(draft, facts);
  addAssumptions(draft, facts, COLUMNS);
  const funded = addFunding(draft, facts, COLUMNS);
  const blocks = addYears(draft, facts, units);
  const months = addViews(draft, facts, blocks.orders);
  if (funded !== undefined) {
    keepTogether(draft, facts.plan.funding.rows.length + 4);
    fillFunding(draft, facts, funded, addFundingTable(draft, facts, COLUMNS));
  }
  addPageBreak(draft);
  addMethod(draft, facts, COLUMNS);
  fillRequest(draft, facts, front.request, blocks);
  fillAsks(draft, facts, front.asks, blocks);
  addCharts(draft, front.charts, facts, { months, money: blocks.money });
  return finishedSheet(draft, name, fittedWidths(draft.rows, WIDTHS), {
    frozenRows: 0,
    dateShown: facts.settings.dateShown,
  });
}

/** The first page; what is worked out further down is written into it at the end. */
function addFront(draft: Draft, facts: ReportFacts): { request: number; asks: number; charts: number } {
  addHead(draft, facts, COLUMNS);
  const request = addRequest(draft, facts, COLUMNS);
  const asks = addAsks(draft, facts, COLUMNS);
  const charts = addChartRoom(draft);
  // Where many years have sent the charts to a page of their own, the assumptions share it.
  if (draft.pageBreaks.length === 0) addPageBreak(draft);
  return { request, asks, charts };
}

function addYears(draft: Draft, facts: ReportFacts, units: UnitsPlace): YearBlocks {
  const rows = facts.plan.years.length + 6;
  keepTogether(draft, rows);
  const counts = addCounts(draft, facts, COLUMNS);
  addCheck(draft, facts, counts, units);
  keepTogether(draft, 2 * rows);
  const orders = addOrders(draft, facts, counts, COLUMNS);
  const money = addMoney(draft, facts, { counts, orders }, COLUMNS);
  return { counts, orders, money };
}

/** The same counts by part of the fleet and of time; answers where the months stand. */
function addViews(draft: Draft, facts: ReportFacts, orders: YearBlock): ReturnType<typeof addTimes> {
  const { plan } = facts;
  addPageBreak(draft);
  const place = { plan, orders, columns: COLUMNS };
  addParts(draft, 'site', plan.sites, place);
  addParts(draft, 'type', plan.types, place);
  addTimes(draft, 'By fiscal quarter', plan.quarters, place);
  return addTimes(draft, 'By month', plan.months, place);
}

// The reader's proof that the list of batteries and the totals are one and the same plan.
function addCheck(draft: Draft, { plan }: ReportFacts, counts: YearBlock, units: UnitsPlace): void {
  const total = address(counts.row + counts.rows, COUNTS.expected);
  const listed = plan.years.map((_, y) => `SUM(${quotedSheet(units.sheet)}!${units.column(y)})`).join('+');
  const same = `ABS(${total}-(${listed}))<0.05`;
  const text = `IF(${same},"agrees with the unit list","DOES NOT AGREE with the unit list")`;
  addRow(draft, [
    cell(`Check of the expected ${countedWord(plan)}`, 'label'),
    null,
    null,
    formula(text, 'agrees with the unit list', 'text', 'caution'),
  ]);
  addGap(draft);
}
