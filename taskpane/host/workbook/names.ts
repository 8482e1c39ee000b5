import type { Outcome } from '../../../src/basics/outcome.ts';
import { answer, problem } from '../../../src/basics/outcome.ts';
import { fixedBlock, quotedSheet } from '../../../src/report/sheet.ts';
import { rangeOf } from '../cellAddress.ts';
import type { CellAt, NamedPlace } from '../sheetHost.ts';
import type { StartedWorkbook } from './engine.ts';
import { openBook } from './engine.ts';
import { liveSheet } from './live.ts';
import type { Mutation, Steps } from './steps.ts';
import { allOrNone } from './steps.ts';

/** The engine's mark of a name that the whole workbook knows. */
const WHOLE_WORKBOOK = 'AllDefaultWorkbook';

type Definition = {
  readonly id: string;
  readonly name: string;
  readonly formulaOrRefString: string;
  readonly localSheetId?: string;
};

/** Where a cell is, as names say it. */
export function placeText({ sheet, row, column }: CellAt): string {
  const [corner] = fixedBlock({ row, column, rows: 1, columns: 1 }).split(':');
  return `${quotedSheet(sheet)}!${corner}`;
}

/** Names a cell for the whole workbook, in place of what the name meant before. */
export function nameLiveCell(started: StartedWorkbook, { name, at }: NamedPlace): Promise<Outcome<void>> {
  return allOrNone(started, async (steps) => {
    if (liveSheet(started, at.sheet) === undefined)
      return problem('badInput', 'sheetNotThere', 'sheet', at.sheet);
    define(started, steps, name, placeText(at));
    return answer(undefined);
  });
}

/** Where a workbook-wide name stands, or undefined where it names no single cell. */
export function namedLiveCell(started: StartedWorkbook, name: string): CellAt | undefined {
  const refersTo = definitionOf(started, name)?.formulaOrRefString;
  const match = /^=?(?:'((?:[^']|'')+)'|([^'!]+))!(\$?[A-Z]+\$?\d+)(?::\$?[A-Z]+\$?\d+)?$/i.exec(
    refersTo ?? '',
  );
  if (match === null) return undefined;
  const range = rangeOf(match[3]!);
  const sheet = (match[1] ?? match[2]!).replace(/''/g, "'");
  if (range === undefined || liveSheet(started, sheet) === undefined) return undefined;
  return { sheet, row: range.startRow, column: range.startColumn };
}

function definitionOf(started: StartedWorkbook, name: string): Definition | undefined {
  return definitionsOf(started).find(
    (each) =>
      each.name.toLowerCase() === name.toLowerCase() &&
      (each.localSheetId === undefined || each.localSheetId === WHOLE_WORKBOOK),
  );
}

/** Every name of the workbook. */
function definitionsOf(started: StartedWorkbook): Definition[] {
  const service = started.univer.__getInjector().get(started.engine.IDefinedNamesService);
  return Object.values(service.getDefinedNameMap(openBook(started).getId()) ?? {});
}

/** Defines a name for the workbook, or for one sheet; the same name of the same reach is replaced. */
export function define(
  started: StartedWorkbook,
  steps: Steps,
  name: string,
  refersTo: string,
  onSheet?: string,
): void {
  const unitId = openBook(started).getId();
  const before = onSheet === undefined ? definitionOf(started, name) : undefined;
  const id = before?.id ?? `${onSheet ?? 'book'}-${name}`;
  const set = (formulaOrRefString: string): Mutation => ({
    id: 'formula.mutation.set-defined-name',
    params: { unitId, id, name, formulaOrRefString, localSheetId: onSheet ?? WHOLE_WORKBOOK },
  });
  // The completion in the grid forgets a name by its text: without it, undoing would stop half way.
  const remove = { id: 'formula.mutation.remove-defined-name', params: { unitId, id, name } };
  steps.make(set(refersTo), before === undefined ? remove : set(before.formulaOrRefString));
}
