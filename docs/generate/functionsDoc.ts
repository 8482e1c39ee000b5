import { readFileSync } from 'node:fs';
import { functions, NAMESPACE } from '../../functions/list.ts';
import { isoDay } from '../../src/basics/calendar.ts';
import type { FormulaAnswer, FormulaScalar } from '../../taskpane/host/workbook/headlessWorkbook.ts';
import { docComments, tagsOf } from './docComments.ts';
import type { FunctionMetadata, FunctionWords, ParameterMetadata } from './metadata.ts';
import { functionMetadata, functionWords, ROOMS } from './metadata.ts';
import { markdownTable } from './validationDoc.ts';

type Described = {
  readonly metadata: FunctionMetadata;
  readonly words: FunctionWords;
  readonly answer: FormulaAnswer;
};

/** Rows of a spilled answer that are shown; the longest table of a fixed form has as many. */
const MOST_ROWS = 8;

const ROOM_HEADS: Readonly<Record<(typeof ROOMS)[number], string>> = {
  label: 'Label',
  service: 'Age',
  electrochemistry: 'Condition: charge and acid',
  cranking: 'Condition: cranking',
  storage: 'Condition: storage',
  life: 'Life',
  planning: 'Plan',
};

/**
 * The page on which every cell function is described.
 * @param answers  the answer to each function's example, in the order of the list
 */
export function functionsDoc(answers: readonly FormulaAnswer[]): string {
  const words = new Map(functionWords().map((each) => [each.id, each]));
  const described = functionMetadata().map((metadata, index) => ({
    metadata,
    words: words.get(metadata.id)!,
    answer: answers[index]!,
  }));
  return [
    '# Cell functions',
    'Written by `npm run docs` from the comments of `functions/*.ts`; every example was computed by a formula engine.',
    RULES,
    ...ROOMS.map((room) => contents(room, described)),
    ...ROOMS.flatMap((room) => roomSection(room, described)),
    '',
  ].join('\n\n');
}

const RULES = `What holds for all of them:

- An argument that says "cell or column" takes one cell or a range; ranges of one formula have one shape, and the answer spills in that shape.
- An empty cell gives an empty answer. A row that can't be answered shows an error in its own cell only.
- \`#VALUE!\` comes with a sentence: what is wrong, what was given, what is allowed. \`#N/A\` says why there is not enough to answer.
- Dates are spreadsheet dates (1900 system) or text such as \`2026-03-15\`, years 1970 to 2100; answers that are dates want a date format.
- Temperatures are in degrees Celsius unless \`unit\` is \`"F"\`. Shares and states of charge go from 0 to 1.
- \`construction\` is \`"AGM"\` (default), \`"flooded"\`, \`"gel"\` (read with the AGM acids until a source is found), or a number: this battery's own full rest voltage at 25 C, 12.0 to 13.5.
- Nothing is volatile: where today matters it is an argument.`;

const nameOf = ({ id }: FunctionMetadata): string => `${NAMESPACE}.${id}`;
const anchorOf = (metadata: FunctionMetadata): string => nameOf(metadata).toLowerCase().replace(/\W/g, '');

const ofRoom = (room: string, described: readonly Described[]): Described[] =>
  described.filter(({ words }) => words.room === room);

function contents(room: (typeof ROOMS)[number], described: readonly Described[]): string {
  const links = ofRoom(room, described).map(({ metadata }) => `[${metadata.id}](#${anchorOf(metadata)})`);
  return `**${ROOM_HEADS[room]}:** ${links.join(' · ')}`;
}

function roomSection(room: (typeof ROOMS)[number], described: readonly Described[]): string[] {
  return [`## ${ROOM_HEADS[room]}`, ...ofRoom(room, described).flatMap(functionSection)];
}

function functionSection({ metadata, words, answer }: Described): string[] {
  return [
    `### ${nameOf(metadata)}`,
    metadata.description,
    `\`=${nameOf(metadata)}(${metadata.parameters.map(shownName).join(', ')})\``,
    markdownTable(
      ['argument', 'what it is', ''],
      metadata.parameters.map((parameter) => [parameter.name, parameter.description, needed(parameter)]),
    ),
    `**Answers:** ${words.answers}.`,
    exampleText(words, answer),
    `**How sure:** ${words.uncertainty}`,
    `**Not for:** ${words.notFor}`,
    `**Errors:**\n\n${errorLines(metadata.id).join('\n')}`,
  ];
}

const shownName = ({ name, optional }: ParameterMetadata): string => (optional ? `[${name}]` : name);

const needed = ({ optional, dimensionality }: ParameterMetadata): string =>
  `${optional ? 'optional' : 'needed'}${dimensionality === 'matrix' ? '' : ', one value'}`;

/** The example with its answer: a table where it spills over several rows, else in the line. */
function exampleText({ example, answers }: FunctionWords, answer: FormulaAnswer): string {
  const shown = (cell: FormulaScalar): string => scalarText(cell, answers.startsWith('Date'));
  const line = `**Example:** \`${example}\` answers`;
  if (!isRows(answer)) return `${line} ${shown(answer)}`;
  const [heads, ...rows] = answer.map((row) => row.map(shown));
  if (rows.length === 0) return `${line} ${heads!.join(', ')}`;
  const cut = rows.length > MOST_ROWS ? [heads!.map(() => '…')] : [];
  return `${line}\n\n${markdownTable(heads!, [...rows.slice(0, MOST_ROWS), ...cut])}`;
}

const isRows = (answer: FormulaAnswer): answer is readonly (readonly FormulaScalar[])[] =>
  Array.isArray(answer);

function scalarText(cell: FormulaScalar, isDate: boolean): string {
  if (typeof cell === 'object') return `\`${cell.error}\` (${cell.message})`;
  if (typeof cell === 'number' && isDate) return `${cell}, as a date ${isoDay(cell)}`;
  return typeof cell === 'number' ? String(Number(cell.toPrecision(5))) : String(cell);
}

/** What the core function's comment says about its problems, under the error that a cell shows for each. */
function errorLines(id: string): string[] {
  const problems = tagsOf(coreComment(id)).filter(({ name }) => name === 'problem');
  const lines = problems.map(({ text }) => {
    const [, kind, when] = /^(\w+)\s+(.*)$/.exec(text)!;
    const [, other] = /^as (\w+)$/.exec(when!) ?? [];
    if (other !== undefined) return `- as [${other.toUpperCase()}](#crank${other.toLowerCase()})`;
    return `- \`${kind === 'notEnoughData' || kind === 'noConvergence' ? '#N/A' : '#VALUE!'}\` ${when}`;
  });
  return [...new Set(lines)];
}

/** The comment right before the core function that answers a cell function. */
function coreComment(id: string): readonly string[] {
  const { room } = functionWords().find((each) => each.id === id)!;
  const { name } = functions.find((each) => each.id === id)!.run;
  const text = readFileSync(new URL(`../../src/${room}/${name}.ts`, import.meta.url), 'utf8');
  const start = text.search(new RegExp(`export (?:function|const) ${name}\\b`));
  return docComments(text.slice(0, start)).at(-1) ?? [];
}
