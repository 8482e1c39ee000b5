import type { Day } from '../basics/calendar.ts';
import type { Settings } from '../inventory/settings.ts';
import { AS_OF_KEY, NO_COLUMN, SETTINGS_SHEET, settingsToRows } from '../inventory/settingsRows.ts';
import { fittedWidths } from './columnWidths.ts';
import { addHeads, addRow, cell, finishedSheet, newDraft } from './draft.ts';
import type { Sheet } from './sheet.ts';

/** The name of the cell that holds the day of the question, for formulas. */
export const AS_OF_NAME = 'CrankAsOf';

/** Where that cell stands on the sheet of settings. */
export const AS_OF_CELL = { row: 1, column: 1 } as const;

const shown = <T>(key: string, value: T): T | string =>
  key.startsWith('columns.') && value === '' ? NO_COLUMN : value;

/** The sheet on which a workbook keeps its settings: a key and a value in each row, read back as the same settings. */
export function settingsSheet(settings: Settings, asOf: Day, name = SETTINGS_SHEET): Sheet {
  const draft = newDraft();
  const [head, ...rows] = settingsToRows(settings);
  addHeads(draft, head!.map(String));
  addRow(draft, [cell(AS_OF_KEY), cell(asOf, 'input', 'date')]);
  for (const [key, value] of rows) addRow(draft, [cell(key), cell(shown(key, value), 'input')]);
  return finishedSheet(
    draft,
    name,
    fittedWidths(draft.rows, [
      [12, 48],
      [12, 48],
    ]),
    { frozenRows: 1, repeatedRows: [0, 0], dateShown: settings.dateShown },
  );
}
