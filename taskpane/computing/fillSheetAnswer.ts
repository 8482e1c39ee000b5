import type { Outcome } from '../../src/basics/outcome.ts';
import { andThen, answer } from '../../src/basics/outcome.ts';
import { filledSheet } from '../../src/report/filledSheet.ts';
import type { Sheet } from '../../src/report/sheet.ts';
import { shownDay } from '../../src/report/shownDay.ts';
import type { FillKey } from '../fill/columns.ts';
import type { HostCell } from '../host/sheetHost.ts';
import { fillAnswer } from './fillAnswer.ts';
import type { Memory } from './memory.ts';

/** What a sheet of answers is asked for; `name` is the one that it will have. */
export type FillSheetAsked = {
  readonly keys: readonly FillKey[];
  readonly problems: 'why' | 'error';
  readonly name: string;
  readonly tab: string;
};

/** The chosen columns as values on a sheet of their own, one row for each battery. */
export function fillSheetAnswer(
  memory: Memory,
  { keys, problems, name, tab }: FillSheetAsked,
): Outcome<Sheet> {
  return andThen(fillAnswer(memory, { keys, problems, live: undefined }), ({ columns }) => {
    const { batteries, parts } = memory.inventory!;
    const { dateShown } = memory.settings!;
    const facts = {
      ...{ tab, batteries, dateShown, asOf: shownDay(memory.asOf!, dateShown) },
      columns: columns.map(({ head, format, values = [] }) => ({
        ...{ head, format },
        values: batteries.map(({ row }) => plain(values[row - parts.dataRows[0]] ?? null)),
      })),
    };
    return answer(filledSheet(facts, name));
  });
}

const plain = (value: HostCell): string | number | boolean | null =>
  typeof value === 'object' && value !== null ? `${value.error} ${value.message}` : value;
