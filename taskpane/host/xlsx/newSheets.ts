import type { CellStyle, WriteSheet } from 'hucre/xlsx';
import { writeXlsx } from 'hucre/xlsx';
import type { Package } from './package.ts';
import { openPackage, partBytes, partText, putText } from './package.ts';
import {
  addRelation,
  freePath,
  relativePath,
  relationsOf,
  relationsPath,
  setContentType,
  workbookPath,
} from './parts.ts';
import { namesForFile, sheetForFile } from './sheetFile.ts';
import type { SheetState } from './workbookState.ts';
import type { StylesPart } from './stylesPart.ts';
import { addStyles } from './stylesPart.ts';
import { attribute, elements, openingTag, prefixOf, withAttribute } from './xml.ts';
import { listedSheets, withSheetRenamed } from './bookPart.ts';

type Name = ReturnType<typeof namesForFile>[number];

/** A sheet of ours put into a file: where it is kept, how the workbook relates to it, and the names it brings. */
export type AddedSheet = {
  readonly path: string;
  readonly relation: string;
  readonly names: readonly Name[];
};

export type AddedSheets = {
  readonly sheets: readonly AddedSheet[];
  /** The number that each look of changed cells has in the file now. */
  readonly looks: ReadonlyMap<CellStyle, number>;
};

// A sheet that carries the looks through the writer and is then thrown away.
const LOOKS_SHEET = 'Looks';

/** Writes new sheets and looks with the writer of whole files and moves them into the file. */
export async function addSheetsOfOurs(
  parts: Package,
  states: readonly SheetState[],
  looks: readonly CellStyle[],
  styles: StylesPart,
): Promise<AddedSheets> {
  if (states.length === 0 && looks.length === 0) return { sheets: [], looks: new Map() };
  const taken = await tableNames(parts);
  const written = states.map((state, index) => withFreeTables(writeSheet(state, index), taken));
  const bytes = await writeXlsx({ sheets: [...written, looksSheet(looks)], stringMode: 'inline' });
  const donor = openPackage(bytes);
  const style = addStyles(styles, { text: (await partText(donor, 'xl/styles.xml'))! });
  const book = await workbookPath(donor);
  const relations = await relationsOf(donor, book);
  const sources = listedSheets((await partText(donor, book))!).map(
    ({ relation }) => relations.find(({ id }) => id === relation)!.target,
  );
  const sheets: AddedSheet[] = [];
  for (const [index, state] of states.entries())
    sheets.push(await movedSheet(parts, donor, sources[index]!, style, state));
  const numbers = lookNumbers((await partText(donor, sources.at(-1)!))!);
  return { sheets, looks: new Map(looks.map((look, index) => [look, style[numbers[index]!]!])) };
}

function writeSheet({ drawn }: SheetState, index: number): WriteSheet {
  return drawn === undefined ? { name: `New ${index}`, rows: [] } : sheetForFile(drawn);
}

function looksSheet(looks: readonly CellStyle[]): WriteSheet {
  return {
    name: LOOKS_SHEET,
    rows: looks.map(() => [1]),
    cells: new Map(looks.map((style, row) => [`${row},0`, { value: 1, style }])),
  };
}

const lookNumbers = (xml: string): number[] =>
  [...xml.matchAll(elements('c'))].map(([cell]) => Number(attribute(openingTag(cell), 's') ?? 0));

async function tableNames(parts: Package): Promise<Set<string>> {
  const names = new Set<string>();
  for (const path of parts.keys()) {
    if (!/\/tables?\/?[^/]*\.xml$/i.test(path) && path !== (await workbookPath(parts))) continue;
    const text = (await partText(parts, path))!;
    for (const [, name] of text.matchAll(
      /<(?:\w+:)?(?:table|definedName)\s[^>]*?(?:displayName|\bname)="([^"]*)"/g,
    ))
      names.add(name!.toLowerCase());
  }
  return names;
}

// A table's name is the whole workbook's, beside its defined names.
function withFreeTables(sheet: WriteSheet, taken: Set<string>): WriteSheet {
  if (sheet.tables === undefined) return sheet;
  const tables = sheet.tables.map((table) => {
    let name = table.name;
    for (let number = 2; taken.has(name.toLowerCase()); number += 1) name = `${table.name}_${number}`;
    taken.add(name.toLowerCase());
    return { ...table, name };
  });
  return { ...sheet, tables };
}

async function movedSheet(
  parts: Package,
  donor: Package,
  source: string,
  style: readonly number[],
  state: SheetState,
): Promise<AddedSheet> {
  const path = freePath(parts, 'xl/worksheets/sheet');
  await putText(parts, path, named(restyled((await partText(donor, source))!, style), state));
  await setContentType(parts, path, 'worksheet');
  await moveRelated(parts, donor, source, path, state);
  const relation = await addRelation(parts, await workbookPath(parts), 'worksheet', path);
  return {
    path,
    relation,
    names: state.drawn === undefined ? [] : namesForFile({ ...state.drawn, name: state.name }),
  };
}

/** A part of a drawn sheet that has another name by now. */
const named = (xml: string, { drawn, name }: SheetState): string =>
  drawn === undefined || drawn.name === name ? xml : withSheetRenamed(xml, drawn.name, name);

/** The sheet with its cells, rows and columns naming their looks by the numbers of the file that they are in now. */
function restyled(xml: string, style: readonly number[]): string {
  return xml
    .replace(/<(c|row)\s[^>]*>/g, (tag, name: string) => {
      const number = attribute(tag, 's');
      if (number === undefined) return name === 'c' && style[0] ? withAttribute(tag, 's', style[0]) : tag;
      return withAttribute(tag, 's', style[Number(number)]!);
    })
    .replace(/<col\s[^>]*>/g, (tag) => {
      const number = attribute(tag, 'style');
      return number === undefined ? tag : withAttribute(tag, 'style', style[Number(number)]!);
    });
}

const STARTS: Record<string, string> = {
  drawing: 'xl/drawings/drawing',
  chart: 'xl/charts/chart',
  table: 'xl/tables/table',
};

/** Moves what a part is related to, and what that is related to, and keeps every relation's id. */
async function moveRelated(
  parts: Package,
  donor: Package,
  source: string,
  path: string,
  state: SheetState,
): Promise<void> {
  let text = await partText(donor, relationsPath(source));
  if (text === undefined) return;
  for (const { kind, target, id } of await relationsOf(donor, source)) {
    const start = STARTS[kind];
    if (start === undefined || (await partBytes(donor, target)) === undefined) continue;
    const moved = freePath(parts, start);
    const content = named((await partText(donor, target))!, state);
    await putText(parts, moved, kind === 'table' ? withTableId(content, moved) : content);
    await setContentType(parts, moved, kind);
    await moveRelated(parts, donor, target, moved, state);
    text = retargeted(text, id, relativePath(path, moved));
  }
  await putText(parts, relationsPath(path), text);
}

function retargeted(relations: string, id: string, target: string): string {
  return relations.replace(elements(`${prefixOf(relations)}Relationship`), (element) =>
    attribute(element, 'Id') === id ? withAttribute(element, 'Target', target) : element,
  );
}

// The numbers of tables must differ; their part's number is far from those that other programs gave.
function withTableId(xml: string, path: string): string {
  const tag = /<table\s[^>]*>/.exec(xml)![0];
  return xml.replace(tag, () => withAttribute(tag, 'id', 100_000 + Number(/(\d+)\.xml$/.exec(path)![1])));
}
