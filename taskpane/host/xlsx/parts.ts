import type { Package } from './package.ts';
import { partText, putText } from './package.ts';
import { attribute, elementsIn, escaped, prefixOf, prefixed, withAttribute } from './xml.ts';

/** One part's relation to another, or to something outside the file. */
export type Relation = {
  readonly id: string;
  /** The last word of its type, such as `worksheet`. */
  readonly kind: string;
  /** The path of the other part; of something outside, its address as written. */
  readonly target: string;
  readonly outside: boolean;
};

const KINDS = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships/';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006/';
export const RELATION_NAMES = KINDS.slice(0, -1);

const CONTENT_TYPES = '[Content_Types].xml';
const TYPE = 'application/vnd.openxmlformats-officedocument.';
const TYPES: Record<string, string> = {
  worksheet: `${TYPE}spreadsheetml.worksheet+xml`,
  table: `${TYPE}spreadsheetml.table+xml`,
  drawing: `${TYPE}drawing+xml`,
  chart: `${TYPE}drawingml.chart+xml`,
  styles: `${TYPE}spreadsheetml.styles+xml`,
  sheetMetadata: `${TYPE}spreadsheetml.sheetMetadata+xml`,
};

/** Where the relations of a part are kept; those of the whole file under ''. */
export function relationsPath(part: string): string {
  const cut = part.lastIndexOf('/') + 1;
  return `${part.slice(0, cut)}_rels/${part.slice(cut)}.rels`;
}

/** The relations of a part, in order. */
export async function relationsOf(parts: Package, part: string): Promise<Relation[]> {
  const text = (await partText(parts, relationsPath(part))) ?? '';
  return elementsIn(text, `${prefixOf(text)}Relationship`).map((element) => {
    const outside = attribute(element, 'TargetMode') === 'External';
    const target = attribute(element, 'Target') ?? '';
    return {
      id: attribute(element, 'Id') ?? '',
      kind: (attribute(element, 'Type') ?? '').replace(/^.*\//, ''),
      target: outside ? target : resolved(part, target),
      outside,
    };
  });
}

/** The path that a target names, seen from a part. */
function resolved(part: string, target: string): string {
  if (target.startsWith('/')) return target.slice(1);
  const steps = part.split('/').slice(0, -1);
  for (const step of target.split('/')) {
    if (step === '..') steps.pop();
    else if (step !== '.') steps.push(step);
  }
  return steps.join('/');
}

/** Relates a part to another one. @returns the relation's id */
export async function addRelation(
  parts: Package,
  part: string,
  kind: string,
  target: string,
): Promise<string> {
  const path = relationsPath(part);
  const text =
    (await partText(parts, path)) ??
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<Relationships xmlns="${PACKAGE}relationships"></Relationships>`;
  const taken = new Set((await relationsOf(parts, part)).map(({ id }) => id));
  let number = taken.size + 1;
  while (taken.has(`rId${number}`)) number += 1;
  const element = `<Relationship Id="rId${number}" Type="${KINDS}${kind}" Target="${escaped(relativePath(part, target))}"/>`;
  await putText(parts, path, withChild(text, 'Relationships', element));
  return `rId${number}`;
}

/** A path as seen from a part: some readers don't know any other. */
export function relativePath(part: string, target: string): string {
  const [from, to] = [part.split('/').slice(0, -1), target.split('/')];
  let same = 0;
  while (same < from.length && from[same] === to[same]) same += 1;
  return [...from.slice(same).map(() => '..'), ...to.slice(same)].join('/');
}

/** Takes relations out of a part's list. */
export async function removeRelations(
  parts: Package,
  part: string,
  unwanted: (relation: Relation) => boolean,
): Promise<void> {
  const ids = new Set((await relationsOf(parts, part)).filter(unwanted).map(({ id }) => id));
  if (ids.size === 0) return;
  const text = (await partText(parts, relationsPath(part)))!;
  const kept = elementsIn(text, `${prefixOf(text)}Relationship`).reduce(
    (all, element) => (ids.has(attribute(element, 'Id') ?? '') ? all.replace(element, '') : all),
    text,
  );
  await putText(parts, relationsPath(part), kept);
}

/** The text of a part with one more child at the end of its root, which may be empty. */
export function withChild(text: string, root: string, element: string): string {
  const prefix = prefixOf(text);
  const child = prefixed(element, prefix);
  const name = prefix + root;
  const closed = text.replace(new RegExp(`<${name}([^>]*)/>\\s*$`), `<${name}$1></${name}>`);
  const at = closed.lastIndexOf(`</${name}`);
  return closed.slice(0, at) + child + closed.slice(at);
}

/** Says of what type a part is, by the kind of relation that leads to it. */
export async function setContentType(parts: Package, path: string, kind: string): Promise<void> {
  await setFullType(parts, path, TYPES[kind] ?? 'application/xml');
}

/** Says of what type a part is. */
export async function setFullType(parts: Package, path: string, type: string): Promise<void> {
  const text = (await partText(parts, CONTENT_TYPES))!;
  const element = overrideOf(text, path);
  const changed =
    element === undefined
      ? withChild(text, 'Types', `<Override PartName="/${escaped(path)}" ContentType="${type}"/>`)
      : text.replace(element, withAttribute(element, 'ContentType', type));
  await putText(parts, CONTENT_TYPES, changed);
}

const overrideOf = (text: string, path: string): string | undefined =>
  elementsIn(text, `${prefixOf(text)}Override`).find(
    (element) => attribute(element, 'PartName') === `/${path}`,
  );

/** A path for a new part that no other has: `xl/tables/table` becomes `xl/tables/table3.xml`. */
export function freePath(parts: Package, start: string): string {
  const taken = new Set([...parts.keys()].map((path) => path.toLowerCase()));
  let number = 1;
  while (taken.has(`${start}${number}.xml`.toLowerCase())) number += 1;
  return `${start}${number}.xml`;
}

/** The part that the whole file starts from: the workbook. */
export async function workbookPath(parts: Package): Promise<string> {
  const start = (await relationsOf(parts, '')).find(({ kind }) => kind === 'officeDocument');
  return start?.target ?? 'xl/workbook.xml';
}

/** Drops the parts that led somewhere once and that nothing leads to any more. */
export async function dropUnreachable(parts: Package, before: ReadonlySet<string>): Promise<void> {
  const now = await reachable(parts);
  const gone = [...before].filter((path) => !now.has(path) && parts.has(path));
  if (gone.length === 0) return;
  let types = (await partText(parts, CONTENT_TYPES))!;
  for (const path of gone) {
    parts.delete(path);
    parts.delete(relationsPath(path));
    types = types.replace(overrideOf(types, path) ?? '', '');
  }
  await putText(parts, CONTENT_TYPES, types);
}

/** Every part that can be reached from the start. */
export async function reachable(parts: Package): Promise<Set<string>> {
  const found = new Set<string>();
  const open = [''];
  for (let part = open.pop(); part !== undefined; part = open.pop()) {
    for (const { target, outside } of await relationsOf(parts, part)) {
      if (outside || found.has(target)) continue;
      found.add(target);
      open.push(target);
    }
  }
  return found;
}
