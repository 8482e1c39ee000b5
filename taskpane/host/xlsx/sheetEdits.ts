import type { CellRange } from '../cellAddress.ts';
import { asksOurs } from './formulaNames.ts';
import { blockAddress } from './sheetPart.ts';
import { attribute, elements, openingTag, unescaped, withAttribute } from './xml.ts';

/** What the file format wants after the list of merged blocks. */
const AFTER_MERGES =
  'phoneticPr|conditionalFormatting|dataValidations|hyperlinks|printOptions|pageMargins|pageSetup|headerFooter|rowBreaks|' +
  'colBreaks|customProperties|cellWatches|ignoredErrors|smartTags|drawing|legacyDrawing|legacyDrawingHF|drawingHF|picture|' +
  'oleObjects|controls|webPublishItems|tableParts|extLst';

/** What stands after a sheet's rows, with these blocks merged and no others. */
export function withMerges(after: string, prefix: string, merges: readonly CellRange[]): string {
  const cells = merges.map((block) => `<${prefix}mergeCell ref="${blockAddress(block)}"/>`).join('');
  const list =
    merges.length === 0 ? '' : `<${prefix}mergeCells count="${merges.length}">${cells}</${prefix}mergeCells>`;
  const bare = after.replace(elements(`${prefix}mergeCells`), '');
  // Views of other users hold elements of the same names, and come before.
  const start = bare.lastIndexOf(`</${prefix}customSheetViews>`) + 1;
  const next = bare.slice(start).search(new RegExp(`<${prefix}(?:${AFTER_MERGES})[\\s/>]`));
  const at = next < 0 ? bare.lastIndexOf(`</${prefix}worksheet`) : start + next;
  return bare.slice(0, at) + list + bare.slice(at);
}

/** The rows of a sheet with the answers of our formulas alone. */
export function withoutOurFormulas(rows: string, prefix: string): string {
  if (!rows.includes('_xldudf_CRANK_')) return rows;
  const shared = new Set<string>();
  return rows.replace(elements(`${prefix}c`), (cell) => {
    const formula = elements(`${prefix}f`).exec(cell)?.[0];
    if (formula === undefined) return cell;
    const number = attribute(openingTag(formula), 'si');
    const ours = asksOurs(unescaped(formula.slice(openingTag(formula).length)));
    if (ours && number !== undefined) shared.add(number);
    if (!ours && (number === undefined || !shared.has(number))) return cell;
    return asText(withAttribute(cell.replace(formula, ''), 'cm', undefined), prefix);
  });
}

/** A formula's answer in words is a text of its own once the formula is gone. */
function asText(cell: string, prefix: string): string {
  if (attribute(openingTag(cell), 't') !== 'str') return cell;
  return withAttribute(cell, 't', 'inlineStr')
    .replace(`<${prefix}v>`, `<${prefix}is><${prefix}t xml:space="preserve">`)
    .replace(`</${prefix}v>`, `</${prefix}t></${prefix}is>`);
}

/** A table without the formulas of ours that its columns are calculated by. */
export function withoutOurColumns(xml: string): string {
  return xml.replace(elements('(?:\\w+:)?calculatedColumnFormula'), (element) =>
    asksOurs(unescaped(element)) ? '' : element,
  );
}
