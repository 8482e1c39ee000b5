import { rangeOf } from '../cellAddress.ts';
import type { Package } from './package.ts';
import { partText, putText } from './package.ts';
import { addRelation, freePath, RELATION_NAMES, relationsOf, setContentType } from './parts.ts';
import { blockAddress } from './sheetPart.ts';
import type { ChangedTable } from './workbookState.ts';
import {
  attribute,
  elements,
  elementsIn,
  escaped,
  escapedCell,
  insertLast,
  openingTag,
  prefixed,
  prefixOf,
  withAttribute,
} from './xml.ts';

const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';

/** The tables of a sheet, by name: where each is kept. */
export async function tablePaths(parts: Package, sheet: string): Promise<Map<string, string>> {
  const found = new Map<string, string>();
  for (const { kind, target } of await relationsOf(parts, sheet)) {
    if (kind !== 'table') continue;
    const text = await partText(parts, target);
    if (text !== undefined) found.set(tableName(text), target);
  }
  return found;
}

const rootOf = (text: string): string => elements(`${prefixOf(text)}table`).exec(text)?.[0] ?? '';

function tableName(text: string): string {
  const tag = openingTag(rootOf(text));
  return attribute(tag, 'displayName') ?? attribute(tag, 'name') ?? '';
}

/** Changes the tables of a sheet or adds them. @returns the sheet's text, which lists its tables */
export async function withTables(
  parts: Package,
  sheet: string,
  xml: string,
  tables: readonly ChangedTable[],
  fileFormula: (formula: string, table: string) => string,
): Promise<string> {
  const known = await tablePaths(parts, sheet);
  let text = xml;
  for (const table of tables) {
    const named = { ...table, formulas: fileFormulas(table, fileFormula) };
    const path = known.get(table.name);
    if (path === undefined) text = listed(text, await addedTable(parts, sheet, named));
    else await putText(parts, path, grownTable((await partText(parts, path))!, named));
  }
  return text;
}

const fileFormulas = (
  { name, formulas }: ChangedTable,
  fileFormula: (formula: string, table: string) => string,
): ReadonlyMap<string, string> =>
  new Map([...(formulas ?? [])].map(([head, formula]) => [head, fileFormula(formula, name)]));

async function addedTable(parts: Package, sheet: string, table: ChangedTable): Promise<string> {
  const path = freePath(parts, 'xl/tables/table');
  const ref = blockAddress(table.block);
  const id = (await largestTableId(parts)) + 1;
  const text =
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n` +
    `<table xmlns="${MAIN}" id="${id}" name="${escaped(table.name)}" displayName="${escaped(table.name)}" ref="${ref}" totalsRowShown="0">` +
    `<autoFilter ref="${ref}"/>${columnsXml('', [], table)}` +
    `<tableStyleInfo name="TableStyleLight1" showFirstColumn="0" showLastColumn="0" showRowStripes="0" showColumnStripes="0"/></table>`;
  await putText(parts, path, text);
  await setContentType(parts, path, 'table');
  return addRelation(parts, sheet, 'table', path);
}

async function largestTableId(parts: Package): Promise<number> {
  let largest = 0;
  for (const path of parts.keys()) {
    if (!/^xl\/tables\/[^/]+\.xml$/i.test(path)) continue;
    const tag = openingTag(rootOf((await partText(parts, path))!));
    largest = Math.max(largest, Number(attribute(tag, 'id') ?? 0));
  }
  return largest;
}

/** The text of a table that has other rows or columns now; what each column had stays with its head. */
function grownTable(text: string, table: ChangedTable): string {
  const prefix = prefixOf(text);
  const root = rootOf(text);
  const totals = Number(attribute(openingTag(root), 'totalsRowCount') ?? 0);
  const ref = blockAddress({ ...table.block, endRow: table.block.endRow + totals });
  const list = elements(`${prefix}tableColumns`).exec(root)?.[0] ?? '';
  const had = elementsIn(list.slice(openingTag(list).length), `${prefix}tableColumn`);
  const columns = columnsXml(prefix, had, table);
  const filter = elements(`${prefix}autoFilter`).exec(root)?.[0];
  const filtered =
    filter === undefined
      ? root
      : root.replace(filter, withAttribute(filter, 'ref', blockAddress(table.block)));
  const made = filtered.replace(list, () => columns);
  return text.replace(root, () => withAttribute(made, 'ref', ref));
}

/** The text of a table whose heads were typed over: by their place in the table, from 0. */
export function withHeads(text: string, heads: ReadonlyMap<number, string>): string {
  const list = elements(`${prefixOf(text)}tableColumns`).exec(text)?.[0];
  if (list === undefined || heads.size === 0) return text;
  let place = -1;
  const renamed = list.replace(elements(`${prefixOf(text)}tableColumn`), (column) => {
    place += 1;
    const head = heads.get(place);
    // It is escaped already, for a line break can't stand in an attribute as it is.
    return head === undefined
      ? column
      : column.replace(/(\sname=)(?:"[^"]*"|'[^']*')/, () => ` name="${escapedHead(head)}"`);
  });
  return text.replace(list, () => renamed);
}

function columnsXml(prefix: string, had: readonly string[], { heads, formulas }: ChangedTable): string {
  let id = Math.max(0, ...had.map((column) => Number(attribute(openingTag(column), 'id') ?? 0)));
  const columns = heads.map((head) => {
    const own = had.find((column) => headOf(column) === head);
    if (own !== undefined) return own;
    id += 1;
    const formula = formulas?.get(head);
    const calculated =
      formula === undefined ? '' : `<calculatedColumnFormula>${escaped(formula)}</calculatedColumnFormula>`;
    return prefixed(
      `<tableColumn id="${id}" name="${escapedHead(head)}">${calculated}</tableColumn>`,
      prefix,
    );
  });
  return `<${prefix}tableColumns count="${heads.length}">${columns.join('')}</${prefix}tableColumns>`;
}

// A line break in a head is written with the format's own escape here, as it is in an attribute.
const escapedHead = (head: string): string => escapedCell(head).replaceAll('\n', '_x000a_');
const headOf = (column: string): string =>
  (attribute(openingTag(column), 'name') ?? '').replace(/_x([0-9a-f]{4})_/gi, (_, code: string) =>
    String.fromCharCode(parseInt(code, 16)),
  );

/** The sheet's text with one more table in its list. */
function listed(xml: string, id: string): string {
  const prefix = prefixOf(xml);
  const item = prefixed(`<tablePart xmlns:r="${RELATION_NAMES}" r:id="${id}"/>`, prefix);
  const list = elements(`${prefix}tableParts`).exec(xml)?.[0];
  if (list === undefined)
    return insertLast(xml, prefixed('<tableParts count="1">', prefix) + item + `</${prefix}tableParts>`);
  const count = elementsIn(list, `${prefix}tablePart`).length + 1;
  const made = withAttribute(list.replace(/\/>$/, `></${prefix}tableParts>`), 'count', count);
  return xml.replace(list, () => made.replace(`</${prefix}tableParts>`, `${item}</${prefix}tableParts>`));
}

/** The block of a table of the file, without its total row; undefined where it shows no heads. */
export function tableBlock(text: string): ReturnType<typeof rangeOf> {
  const tag = openingTag(rootOf(text));
  const block = rangeOf(attribute(tag, 'ref') ?? '');
  if (attribute(tag, 'headerRowCount') === '0') return undefined;
  return block && { ...block, endRow: block.endRow - Number(attribute(tag, 'totalsRowCount') ?? 0) };
}

/** A reference to the row that a formula stands in, as files write it: the grid's `[@Head]` names its table and row. */
export function thisRowForFile(formula: string, table: string | undefined): string {
  if (table === undefined || !formula.includes('[@')) return formula;
  const inTexts = /("(?:[^"]|"")*")/;
  return formula
    .split(inTexts)
    .map((piece, index) =>
      index % 2 === 1
        ? piece
        : piece.replace(
            THIS_ROW,
            (_, name: string, long: string, short: string) =>
              `${name || table}[[#This Row],[${long ?? short}]]`,
          ),
    )
    .join('');
}

const THIS_ROW = /([A-Za-z_][\w.]*)?\[@(?:\[((?:[^[\]']|'.)*)\]|((?:[^[\]']|'.)*))\]/g;
