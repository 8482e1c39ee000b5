import type { PlanYear } from '../planning/planYears.ts';
import type { Draft } from './draft.ts';
import { addGap, addHeads, addRow, addSentence, cell, totalCell } from './draft.ts';
import type { ReportFacts } from './reportFacts.ts';
import type { SheetCell } from './sheet.ts';
import type { YearBlock } from './yearBlock.ts';
import { countedWord, COUNTS, emptyTotals, overYears } from './yearBlock.ts';

const heads = (counted: string): string[] => [
  'Fiscal year',
  'From',
  'To',
  'Due now',
  `Expected ${counted}`,
  'Low (5 %)',
  'High (95 %)',
  'Enough 4 years in 5',
  'Enough 19 years in 20',
  'Good mates renewed',
  'Planned renewals',
  'Fleet changes',
];

/** Failures to come by fiscal year, with their band. */
export function addCounts(draft: Draft, { plan }: ReportFacts, columns: number): YearBlock {
  const { years } = plan;
  addSentence(draft, 'By fiscal year: batteries that will be needed', 'heading', columns);
  addHeads(draft, heads(countedWord(plan)));
  const block = { row: draft.rows.length, rows: years.length };
  for (const year of years) addRow(draft, countCells(year));
  addRow(draft, totals(block, years));
  for (const note of notes(plan)) addSentence(draft, note, 'note', columns);
  addGap(draft);
  return block;
}

function countCells(year: PlanYear): SheetCell[] {
  const { needs } = year;
  return [
    cell(year.label),
    cell(year.from, 'body', 'date'),
    cell(year.to, 'body', 'date'),
    cell(year.dueNow, 'body', 'whole'),
    cell(year.expected, 'body', 'oneDecimal'),
    cell(year.low, 'body', 'whole'),
    cell(year.high, 'body', 'whole'),
    cell(needs['4in5'], 'body', 'whole'),
    cell(needs['19in20'], 'body', 'whole'),
    cell(year.mates, 'body', 'oneDecimal'),
    cell(year.planned, 'body', 'oneDecimal'),
    cell(year.fleetChange, 'body', 'oneDecimal'),
  ];
}

function totals(block: YearBlock, years: readonly PlanYear[]): SheetCell[] {
  const sum = (of: (year: PlanYear) => number): number => overYears(years, of);
  return [
    cell('All years', 'total'),
    ...emptyTotals(2),
    totalCell(
      block,
      COUNTS.dueNow,
      sum(({ dueNow }) => dueNow),
      'whole',
    ),
    totalCell(
      block,
      COUNTS.expected,
      sum(({ expected }) => expected),
      'oneDecimal',
    ),
    ...emptyTotals(2),
    totalCell(
      block,
      COUNTS['4in5'],
      sum(({ needs }) => needs['4in5']),
      'whole',
    ),
    totalCell(
      block,
      COUNTS['19in20'],
      sum(({ needs }) => needs['19in20']),
      'whole',
    ),
    totalCell(
      block,
      COUNTS.mates,
      sum(({ mates }) => mates),
      'oneDecimal',
    ),
    totalCell(
      block,
      COUNTS.planned,
      sum(({ planned }) => planned),
      'oneDecimal',
    ),
    totalCell(
      block,
      COUNTS.fleetChange,
      sum(({ fleetChange }) => fleetChange),
      'oneDecimal',
    ),
  ];
}

function notes(plan: ReportFacts['plan']): string[] {
  const [first] = plan.years;
  const begun = `${first!.label} counts only what is left of it from the as-of date. `;
  return [
    `${begun}Due now (condemned, still in service) stands beside the ${countedWord(plan)} to come.`,
    "In 9 years of 10 a year's own count lies from its low to its high; low and high of single years do not add up. Enough 4 years in 5 and 19 in 20 are given on top of what the years before were given, so these do add up. Good mates and planned renewals are part of the expected count.",
  ];
}
