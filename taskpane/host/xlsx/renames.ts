import { withSheetRenamed } from './bookPart.ts';
import type { Package } from './package.ts';
import { partText, putText } from './package.ts';
import { workbookPath } from './parts.ts';
import type { PlacedSheet } from './saveSheets.ts';
import { escaped } from './xml.ts';

/** Parts that may name sheets. */
const NAMING =
  /^xl\/(?:workbook\.xml|worksheets\/|charts\/|chartsheets\/|tables\/|pivotCache\/|slicerCaches\/)/i;

type Rename = { readonly from: string; readonly to: string | undefined };

/** Every formula of the file names the sheets as they are called now, and has #REF! for those that are gone. */
export async function renameSheets(
  parts: Package,
  before: readonly string[],
  placed: readonly PlacedSheet[],
): Promise<void> {
  const renames = renamesOf(before, placed);
  if (renames.length === 0) return;
  const book = await workbookPath(parts);
  for (const path of [...parts.keys()]) {
    if (path !== book && !(NAMING.test(path) && path.endsWith('.xml'))) continue;
    const text = (await partText(parts, path))!;
    const renamed = inTwoSteps(text, renames);
    if (renamed !== text) await putText(parts, path, renamed);
  }
}

function renamesOf(before: readonly string[], placed: readonly PlacedSheet[]): Rename[] {
  return before.flatMap((from): Rename[] => {
    const to = placed.find(({ state }) => state.original === from)?.state.name;
    return to === from ? [] : [{ from, to }];
  });
}

// Two sheets may have exchanged their names: each gets one in between that nobody has.
function inTwoSteps(text: string, renames: readonly Rename[]): string {
  const between = renames.map(({ from, to }, index) => ({ from, to, name: to && `~between ${index}~` }));
  const first = between.reduce((all, { from, name }) => withSheetRenamed(all, from, name), text);
  const second = between.reduce((all, { to, name }) => (name ? withSheetRenamed(all, name, to) : all), first);
  return between.reduce((all, { from, to }) => (to ? withSourceRenamed(all, from, to) : all), second);
}

/** The sheet that a pivot table takes its data from is named outside of formulas. */
const withSourceRenamed = (text: string, from: string, to: string): string =>
  text.replaceAll(` sheet="${escaped(from)}"`, ` sheet="${escaped(to)}"`);
