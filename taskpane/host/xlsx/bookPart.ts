import { fixedBlock, quotedSheet } from '../../../src/report/sheet.ts';
import type { NamedPlace } from '../sheetHost.ts';
import {
  attribute,
  elements,
  elementsIn,
  escaped,
  insertBefore,
  openingTag,
  prefixed,
  prefixOf,
  withAttribute,
} from './xml.ts';

/** A sheet as the workbook part lists it. */
export type ListedSheet = { readonly name: string; readonly relation: string; readonly element: string };

/** A sheet as it is to be listed: one of before, or a new one. */
export type SheetToList = {
  readonly name: string;
  readonly from: ListedSheet | undefined;
  readonly relation: string;
  readonly hidden?: boolean | undefined;
};

/** The sheets that a workbook part lists, in order. */
export function listedSheets(xml: string): ListedSheet[] {
  const prefix = prefixOf(xml);
  const list = elements(`${prefix}sheets`).exec(xml)?.[0] ?? '';
  return elementsIn(list.slice(openingTag(list).length), `${prefix}sheet`).map((element) => ({
    name: attribute(element, 'name') ?? '',
    relation: /\s\w+:id\s*=\s*["']([^"']*)["']/.exec(element)?.[1] ?? '',
    element,
  }));
}

const RELATIONS = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';

/** The workbook part with these sheets in place of its own; what refers to sheets by number follows them. */
export function withSheets(xml: string, sheets: readonly SheetToList[]): string {
  const [prefix, before] = [prefixOf(xml), listedSheets(xml)];
  let id = Math.max(0, ...before.map(({ element }) => Number(attribute(element, 'sheetId') ?? 0)));
  const made = sheets.map(({ name, from, relation, hidden }) => {
    const fresh = `<${prefix}sheet name="" sheetId="${(id += from === undefined ? 1 : 0)}" xmlns:r="${RELATIONS}" r:id="${relation}"/>`;
    const named = withAttribute(from?.element ?? fresh, 'name', name);
    return hidden === undefined ? named : withAttribute(named, 'state', hidden ? 'hidden' : undefined);
  });
  const list = elements(`${prefix}sheets`).exec(xml)![0];
  const text = xml.replace(list, () => `<${prefix}sheets>${made.join('')}</${prefix}sheets>`);
  const places = before.map((each) =>
    sheets.findIndex(({ from }) => from === each || from?.name === each.name),
  );
  return withNamesMoved(withViewsMoved(text, places), places);
}

function withViewsMoved(xml: string, places: readonly number[]): string {
  return elementsIn(xml, `${prefixOf(xml)}workbookView`).reduce((text, view) => {
    const moved = ['activeTab', 'firstSheet'].reduce((element, name) => {
      const place = attribute(element, name);
      return place === undefined
        ? element
        : withAttribute(element, name, Math.max(0, places[Number(place)] ?? 0));
    }, view);
    return text.replace(view, () => moved);
  }, xml);
}

/** Names known on one sheet only count their sheets; those of a sheet that is gone go with it. */
function withNamesMoved(xml: string, places: readonly number[]): string {
  return xml.replace(elements(`${prefixOf(xml)}definedName`), (element) => {
    const place = attribute(openingTag(element), 'localSheetId');
    if (place === undefined) return element;
    const now = places[Number(place)] ?? -1;
    return now < 0 ? '' : withAttribute(element, 'localSheetId', now);
  });
}

/** A name to be defined; `sheet` is the place of the sheet that alone knows it. */
export type NameToDefine = { readonly name: string; readonly refersTo: string; readonly sheet?: number };

const AFTER_NAMES = [
  'calcPr',
  'oleSize',
  'customWorkbookViews',
  'pivotCaches',
  'smartTagPr',
  'smartTagTypes',
  'webPublishing',
  'fileRecoveryPr',
  'webPublishObjects',
];

/** The workbook part with names defined, each in place of the one that it had of the same name and reach. */
export function withNames(xml: string, names: readonly NameToDefine[]): string {
  if (names.length === 0) return xml;
  const prefix = prefixOf(xml);
  const list = elements(`${prefix}definedNames`).exec(xml)?.[0];
  const had = list === undefined ? [] : elementsIn(list, `${prefix}definedName`);
  const kept = had.filter((element) => !names.some((name) => isSameName(openingTag(element), name)));
  const made = names.map(({ name, refersTo, sheet }) => {
    const local = sheet === undefined ? '' : ` localSheetId="${sheet}"`;
    return prefixed(
      `<definedName name="${escaped(name)}"${local}>${escaped(refersTo)}</definedName>`,
      prefix,
    );
  });
  const all = `<${prefix}definedNames>${[...kept, ...made].join('')}</${prefix}definedNames>`;
  return list === undefined ? insertBefore(xml, AFTER_NAMES, all) : xml.replace(list, () => all);
}

const isSameName = (tag: string, { name, sheet }: NameToDefine): boolean =>
  attribute(tag, 'name')?.toLowerCase() === name.toLowerCase() &&
  attribute(tag, 'localSheetId') === (sheet === undefined ? undefined : String(sheet));

/** A cell that was named for the whole workbook. */
export function placeToDefine({ name, at }: NamedPlace): NameToDefine {
  const [corner] = fixedBlock({ row: at.row, column: at.column, rows: 1, columns: 1 }).split(':');
  return { name, refersTo: `${quotedSheet(at.sheet)}!${corner}` };
}

/** The workbook part told to calculate everything when it is opened: answers saved beside old formulas may be stale. */
export function calculatedOnOpening(xml: string): string {
  const prefix = prefixOf(xml);
  const there = elements(`${prefix}calcPr`).exec(xml)?.[0];
  if (there !== undefined) return xml.replace(there, () => withAttribute(there, 'fullCalcOnLoad', 1));
  return insertBefore(xml, AFTER_NAMES.slice(1), `<${prefix}calcPr fullCalcOnLoad="1"/>`);
}

/** Whether a workbook part counts its days from 1904. */
export function countsFrom1904(xml: string): boolean {
  const tag = elements(`${prefixOf(xml)}workbookPr`).exec(xml)?.[0] ?? '';
  return ['1', 'true'].includes(attribute(openingTag(tag), 'date1904') ?? '');
}

const FORMULAS = 'f|formula|formula1|formula2|definedName|sqref|calculatedColumnFormula|totalsRowFormula';

/** The text of any part whose formulas say another name for a sheet that was renamed, `#REF` for one that is gone. */
export function withSheetRenamed(xml: string, from: string, to: string | undefined): string {
  const [escapedName, plain] = [escaped(from.replaceAll("'", "''")), /^[A-Za-z_][\w.]*$/.test(from)];
  if (!xml.includes(escaped(from)) && !xml.includes(escapedName)) return xml;
  const quoted = pattern(escapedName);
  const one = new RegExp(
    `(?:'|&apos;)${quoted}(?:'|&apos;)!${plain ? `|(?<![\\w.'\\]])${quoted}!` : ''}`,
    'gi',
  );
  const name = to === undefined ? '#REF!' : `${escaped(quotedSheet(to))}!`;
  const inFormulas = new RegExp(`(<(?:\\w+:)?(?:${FORMULAS})(?:\\s[^>]*)?>)([^<]+)`, 'g');
  const inLinks = /(<(?:\w+:)?hyperlink\s[^>]*\blocation=")([^"]+)/g;
  const renamed = (_: string, start: string, text: string): string => start + text.replace(one, () => name);
  return xml.replace(inFormulas, renamed).replace(inLinks, renamed);
}

const pattern = (text: string): string =>
  text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replaceAll("''", "(?:''|&apos;&apos;)");
