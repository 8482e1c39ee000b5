import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import generator from 'custom-functions-metadata';
import { functions } from '../../functions/list.ts';
import type { Tag } from './docComments.ts';
import { docComments, tagsOf } from './docComments.ts';

/** One parameter as hosts show it. */
export type ParameterMetadata = {
  readonly name: string;
  readonly description: string;
  readonly type: string;
  readonly dimensionality?: 'matrix';
  readonly optional?: boolean;
};

/** One function as hosts show it. */
export type FunctionMetadata = {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly parameters: readonly ParameterMetadata[];
  readonly result: { readonly type?: string; readonly dimensionality?: 'matrix' };
  readonly allowErrorForDataTypeAny: true;
};

/** What a function's JSDoc says besides, for docs/functions.md. */
export type FunctionWords = {
  readonly id: string;
  readonly room: string;
  readonly answers: string;
  readonly uncertainty: string;
  readonly notFor: string;
  readonly example: string;
};

/** The rooms of functions, in the order of the docs. */
export const ROOMS = [
  'label',
  'service',
  'electrochemistry',
  'cranking',
  'storage',
  'life',
  'planning',
] as const;

const FILE = fileURLToPath(new URL('../../functions/functions.json', import.meta.url));
const order = new Map(functions.map(({ id }, index) => [id, index]));

function pathOfRoom(room: string): string {
  return fileURLToPath(new URL(`../../functions/${room}.ts`, import.meta.url));
}

function textOfRoom(room: string): string {
  return readFileSync(pathOfRoom(room), 'utf8');
}

/** The metadata of every function, in the order of the list, as the generator reads it from the JSDoc. */
export function functionMetadata(): FunctionMetadata[] {
  return ROOMS.flatMap((room) => roomMetadata(room)).sort(
    (a, b) => (order.get(a.id) ?? -1) - (order.get(b.id) ?? -1),
  );
}

function roomMetadata(room: string): FunctionMetadata[] {
  const { functions: found, extras } = generator.parseTree(textOfRoom(room), `${room}.ts`);
  const errors = extras.flatMap((extra) => extra.errors);
  if (errors.length > 0) throw new Error(`functions/${room}.ts: ${errors.join('; ')}`);
  // Errors in a range must reach us cell by cell: one bad row may not spoil a column.
  return (found as unknown as FunctionMetadata[]).map((each) => ({
    ...each,
    allowErrorForDataTypeAny: true,
  }));
}

/** The file that hosts read, as text. */
export function metadataText(): string {
  return `${JSON.stringify({ allowCustomDataForDataTypeAny: true, functions: functionMetadata() }, null, 2)}\n`;
}

/** Writes functions/functions.json. */
export function writeMetadata(): void {
  writeFileSync(FILE, metadataText());
}

/** The further words of every function's JSDoc, in the order of the list. */
export function functionWords(): FunctionWords[] {
  return ROOMS.flatMap((room) => roomWords(room)).sort(
    (a, b) => (order.get(a.id) ?? -1) - (order.get(b.id) ?? -1),
  );
}

function roomWords(room: string): FunctionWords[] {
  return docComments(textOfRoom(room))
    .map((comment) => tagsOf(comment))
    .filter((tags) => tags.some(({ name }) => name === 'customfunction'))
    .map((tags) => wordsOf(room, tags));
}

function wordsOf(room: string, tags: readonly Tag[]): FunctionWords {
  const text = (wanted: string): string => tags.find(({ name }) => name === wanted)?.text ?? '';
  return {
    id: text('customfunction'),
    room,
    answers: text('returns').replace(/^\{[^}]*\}\s*/, ''),
    uncertainty: text('uncertainty'),
    notFor: text('notfor'),
    example: text('example'),
  };
}
