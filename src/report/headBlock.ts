import type { Draft } from './draft.ts';
import { addGap, addSentence } from './draft.ts';
import type { ReportFacts } from './reportFacts.ts';
import { shownDay } from './shownDay.ts';
import { changedTexts } from './shownText.ts';

/** Head of the forecast: what it is, from which rows, by whom. */
export function addHead(draft: Draft, facts: ReportFacts, columns: number): void {
  const { plan, fileName, tab, settings } = facts;
  const asOf = shownDay(plan.asOf, settings.dateShown);
  addSentence(draft, 'Replacement forecast for starting batteries', 'title', columns);
  addSentence(draft, `As of ${asOf}, from ${fileName}, sheet ${tab}`, 'subtitle', columns);
  addSentence(draft, makingSentence(facts), 'note', columns);
  for (const sentence of headSentences(facts)) addSentence(draft, sentence, 'label', columns);
  addSentence(draft, PRINTING, 'note', columns);
  addGap(draft);
}

const PRINTING =
  'To print, choose this sheet and the ones that you want with it, not the whole workbook: it may hold the inventory too.';

function makingSentence({ madeBy, fileHash, hashOf = 'file' }: ReportFacts): string {
  const hashed = hashOf === 'file' ? 'Source file' : 'Rows of the inventory, as they were read,';
  return `Made by ${madeBy}. ${hashed} SHA-256 ${fileHash}.`;
}

function headSentences(facts: ReportFacts): string[] {
  const { plan, toCheck } = facts;
  return [
    fleetSentence(plan),
    rowSentence(facts),
    recordSentence(facts),
    toCheck.length === 0
      ? ''
      : `${counted(toCheck.length, 'thing')} to check ${stands(toCheck.length)} on the sheet of rows to check.`,
    changedSentence(changedTexts(facts)),
  ].filter((sentence) => sentence !== '');
}

const counted = (count: number, thing: string): string => `${count} ${thing}${count === 1 ? '' : 's'}`;
const stands = (count: number): string => (count === 1 ? 'stands' : 'stand');

function fleetSentence({ inService, dueNow, ageUnknown, usableStock }: ReportFacts['plan']): string {
  const batteries = inService === 1 ? '1 battery' : `${inService} batteries`;
  return `${batteries} in service, of which ${dueNow} due now and ${ageUnknown} whose age is not known; ${usableStock} usable in stock.`;
}

/** How many rows were used and what became of the others. */
function rowSentence({ rows, leftOutReasons }: ReportFacts): string {
  const reasons = Object.entries(leftOutReasons).map(([reason, count]) => `${reason}: ${count}`);
  const why = reasons.length > 0 ? ` (${reasons.join('; ')})` : '';
  const unknown = rows.ageUnknown > 0 ? ' (of removed batteries, or planned by type and site)' : '';
  return `Rows: ${rows.read} read = ${rows.used} used + ${rows.repaired} used after a stated repair + ${rows.ageUnknown} ${rows.ageUnknown === 1 ? 'row' : 'rows'} of unknown age${unknown} + ${rows.leftOut} left out${why}.`;
}

function recordSentence({ recordStart, settings }: ReportFacts): string {
  const { date, from } = recordStart;
  if (from === 'never')
    return 'This sheet shows only what is still here, so it cannot show how long batteries last: a rule of thumb carries the answer.';
  if (from === 'column') return 'Since when each battery was watched is told by its own row.';
  const since = date === undefined ? 'an unknown date' : shownDay(date, settings.dateShown);
  const basis = from === 'assumed' ? ' (assumed: the month of the earliest removal)' : '';
  return `Every removal has been written down since ${since}${basis}.`;
}

function changedSentence(count: number): string {
  if (count === 0) return '';
  const texts = count === 1 ? '1 text of the inventory holds' : `${count} texts of the inventory hold`;
  return `${texts} what no cell can hold: characters that can't be written are shown as a symbol such as \u2407, longer than 32,767 characters is cut and says so.`;
}
