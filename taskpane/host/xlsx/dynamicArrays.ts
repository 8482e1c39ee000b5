import type { Package } from './package.ts';
import { partText, putText } from './package.ts';
import { addRelation, relationsOf, setContentType, withChild } from './parts.ts';
import {
  attribute,
  elements,
  elementsIn,
  insertBefore,
  openingTag,
  prefixed,
  prefixOf,
  withAttribute,
} from './xml.ts';

const PATH = 'xl/metadata.xml';
const KIND = 'sheetMetadata';

// [MS-XLSX] 2.2.4.8: what marks the formula of a cell as one whose answers spill.
const MARK = 'XLDAPR';
const TYPE =
  `<metadataType name="${MARK}" minSupportedVersion="120000" copy="1" pasteAll="1" pasteValues="1" merge="1" splitFirst="1" ` +
  'rowColShift="1" clearFormats="1" clearComments="1" assign="1" coerce="1" cellMeta="1"/>';
const PROPERTIES =
  '<xda:dynamicArrayProperties xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray" fDynamic="1" fCollapsed="0"/>';
const FUTURE = `<bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}">${PROPERTIES}</ext></extLst></bk>`;
const EMPTY =
  '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n' +
  '<metadata xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"></metadata>';

/** The number by which a cell says that its formula spills; what the file needs for that is added. */
export async function dynamicMark(parts: Package, book: string): Promise<number> {
  const path = (await relationsOf(parts, book)).find(({ kind }) => kind === KIND)?.target;
  const text = (path && (await partText(parts, path))) ?? EMPTY;
  const known = markIn(text);
  if (known !== undefined) return known;
  const made = withMark(text);
  await putText(parts, path ?? PATH, made);
  if (path === undefined) {
    await setContentType(parts, PATH, KIND);
    await addRelation(parts, book, KIND, PATH);
  }
  return markIn(made)!;
}

function list(text: string, name: string): string[] {
  const prefix = prefixOf(text);
  const whole = elements(prefix + name).exec(text)?.[0] ?? '';
  return elementsIn(
    whole.slice(openingTag(whole).length),
    prefix + (name === 'metadataTypes' ? 'metadataType' : 'bk'),
  );
}

function markIn(text: string): number | undefined {
  const type = list(text, 'metadataTypes').findIndex((each) => attribute(each, 'name') === MARK) + 1;
  if (type === 0) return undefined;
  const found = list(text, 'cellMetadata').findIndex((block) =>
    new RegExp(`<\\w*:?rc\\s[^>]*\\bt="${type}"`).test(block),
  );
  return found < 0 ? undefined : found + 1;
}

function withMark(text: string): string {
  const types = list(text, 'metadataTypes');
  const known = types.findIndex((each) => attribute(each, 'name') === MARK) + 1;
  const type = known || types.length + 1;
  const typed = known
    ? text
    : withEntry(text, 'metadataTypes', TYPE, [
        'metadataStrings',
        'mdxMetadata',
        'futureMetadata',
        'cellMetadata',
        'valueMetadata',
      ]);
  const future = known ? typed : withFuture(typed);
  return withEntry(future, 'cellMetadata', `<bk><rc t="${type}" v="0"/></bk>`, ['valueMetadata']);
}

function withFuture(text: string): string {
  const element = prefixed(
    `<futureMetadata name="${MARK}" count="1">${FUTURE}</futureMetadata>`,
    prefixOf(text),
  );
  return insertBefore(text, ['cellMetadata', 'valueMetadata'], element);
}

function withEntry(text: string, name: string, entry: string, later: readonly string[]): string {
  const prefix = prefixOf(text);
  const whole = elements(prefix + name).exec(text)?.[0];
  if (whole === undefined)
    return insertBefore(text, later, prefixed(`<${name} count="1">${entry}</${name}>`, prefix));
  const counted = withAttribute(whole, 'count', list(text, name).length + 1);
  return text.replace(whole, () => withChild(counted, name, entry));
}
