import type { Day } from '../basics/calendar.ts';
import { addMonths, dayParts, isoDay } from '../basics/calendar.ts';
import type { Problem } from '../basics/outcome.ts';
import { problemText } from '../basics/problemText.ts';
import { DEFAULT_LAYOUT } from '../label/layout.ts';
import { readCode } from '../label/readCode.ts';
import { codeMeanings } from './codeMeaning.ts';
import { isBlank, isError, isPlaceholder, shownCell } from './cells.ts';
import type { FindingKind } from './findingKinds.ts';
import type { Findings } from './findings.ts';
import type { Cell } from './inventory.ts';
import type { LayoutChoice, MakerCodes } from './layoutChoice.ts';
import { layoutChoices } from './layoutChoice.ts';
import type { DateColumn, Lines } from './lines.ts';
import { readDate } from './readDate.ts';

/** What the codes and made dates of the rows say. */
export type MadeColumn = DateColumn & {
  readonly lots: readonly string[];
  /** The layout of each maker's codes, and what one of them means in it. */
  readonly layouts: Readonly<Record<string, string>>;
  readonly layoutMeanings: Readonly<Record<string, string>>;
};

/** What a code cell says: the day (or the first and last day) made, its lot, and what was odd. */
type CodeAnswer = {
  readonly first?: Day;
  readonly last?: Day;
  readonly lot: string;
  readonly quirk?: FindingKind;
  readonly done?: string;
};

type CodeJob = {
  readonly asOf: Day;
  readonly findings: Findings;
  readonly layouts: Readonly<Record<string, string>>;
};

const LONG_DASHES = /[\u2010-\u2015\u2212]/;
const ALL_LONG_DASHES = /[\u2010-\u2015\u2212]/g;

/** When each battery was made, and its lot: from the made column where it says so, else from the code. */
export function readMade(lines: Lines, job: CodeJob): MadeColumn {
  const made = lines.date('made');
  const [first, last] = [Float64Array.from(made.first), Float64Array.from(made.last)];
  const lots = [...lines.text('lot')];
  if (!lines.at.has('code')) return { first, last, lots, layouts: {}, layoutMeanings: {} };
  const makers = lines.text('maker');
  const codes = codesOf(lines, makers);
  const choices = layoutChoices(codes, job.layouts, job.asOf);
  const meanings: Meanings = (maker, layouts) =>
    codeMeanings(codes.get(maker)?.keys() ?? [], layouts, job.asOf);
  reportChoices(lines, makers, choices, meanings, job.findings);
  const read = codeReader(choices, job.asOf);
  for (let line = 0; line < lines.count; line += 1) {
    const cell = lines.cell(line, 'code');
    if (isBlank(cell)) continue;
    const code = read(cell, makers[line]!, lines.isDateCell(line, 'code'));
    if (code.quirk !== undefined) report(lines, line, cell, code, makers[line]!, job.findings);
    if (Number.isNaN(first[line]!) && code.first !== undefined)
      [first[line], last[line]] = [code.first, code.last!];
    lots[line] ||= code.lot;
  }
  const layouts = Object.fromEntries([...choices].map(([maker, { layout }]) => [maker, layout.text]));
  const layoutMeanings = Object.fromEntries(
    [...choices].map(([maker, { layout }]) => [maker, meanings(maker, [layout.text])[0]!]),
  );
  return { first, last, lots, layouts, layoutMeanings };
}

// What can be a code: text or a whole number, neither a filler nor a cell that has become a date.
function codeIn(cell: Cell, isDate: boolean): string | number | undefined {
  if (typeof cell === 'number') return isDate || isPlaceholder(cell) ? undefined : cell;
  if (typeof cell !== 'string' || isPlaceholder(cell)) return undefined;
  const text = cell.trim();
  return LONG_DASHES.test(text) ? text.replace(ALL_LONG_DASHES, '-') : text;
}

function codesOf(lines: Lines, makers: readonly string[]): ReadonlyMap<string, MakerCodes> {
  const codes = new Map<string, Map<string | number, number>>();
  for (let line = 0; line < lines.count; line += 1) {
    const code = codeIn(lines.cell(line, 'code'), lines.isDateCell(line, 'code'));
    if (code === undefined || code === '') continue;
    const ofMaker = codes.get(makers[line]!) ?? new Map<string | number, number>();
    if (ofMaker.size === 0) codes.set(makers[line]!, ofMaker);
    ofMaker.set(code, (ofMaker.get(code) ?? 0) + 1);
  }
  return codes;
}

type Reader = (cell: Cell, maker: string, isDate: boolean) => CodeAnswer;

function codeReader(choices: ReadonlyMap<string, LayoutChoice>, asOf: Day): Reader {
  const seen = new Map<string, Map<Cell, CodeAnswer>>();
  return (cell, maker, isDate) => {
    if (isDate) return fromDateCell(cell);
    const ofMaker = seen.get(maker) ?? new Map<Cell, CodeAnswer>();
    if (ofMaker.size === 0) seen.set(maker, ofMaker);
    const known = ofMaker.get(cell);
    if (known !== undefined) return known;
    const own = answerOf(cell, choices.get(maker), asOf);
    const read =
      maker === '' && own.quirk === 'unreadable code' ? (asOthers(cell, choices, asOf) ?? own) : own;
    ofMaker.set(cell, read);
    return read;
  };
}

function answerOf(cell: Cell, choice: LayoutChoice | undefined, asOf: Day): CodeAnswer {
  if (isError(cell)) return { lot: '', quirk: 'error in the cell', done: 'counts as empty' };
  if (isPlaceholder(cell)) return { lot: '', quirk: 'placeholder', done: 'counts as empty' };
  const code = codeIn(cell, false);
  if (code === undefined || choice === undefined) return { lot: '', quirk: 'unreadable code' };
  const reading = readCode(code, choice.layout, asOf);
  if (!reading.ok) return fromMonthName(cell, asOf) ?? notRead(reading.problem, asOf);
  const { day, lot, zeroAdded } = reading.value;
  const read = { first: day, last: lastDay(day, choice), lot };
  const done = `read as ${isoDay(day)}${lot === '' ? '' : `, lot ${lot}`}`;
  if (zeroAdded) return { ...read, quirk: 'leading zero eaten', done: `${done}, with the zero put back` };
  return LONG_DASHES.test(String(cell)) ? { ...read, quirk: 'dash turned to a long dash', done } : read;
}

// A code without a maker may be in any layout of the sheet: it is read where only one of them fits.
function asOthers(cell: Cell, choices: ReadonlyMap<string, LayoutChoice>, asOf: Day): CodeAnswer | undefined {
  const layouts = new Map([...choices.values()].map((choice) => [choice.layout.text, choice]));
  const read = [...layouts.values()].flatMap((choice) => {
    const answer = answerOf(cell, choice, asOf);
    return answer.first === undefined ? [] : [{ answer, choice }];
  });
  if (read.length === 0) return undefined;
  const { answer, choice } = read[0]!;
  if (read.length > 1) {
    const fits = read.map((one) => one.choice.layout.text).join(' and ');
    return { lot: '', quirk: 'unreadable code', done: `not read: no maker is named, and ${fits} both fit` };
  }
  const done = `read as ${choice.layout.text}, the one layout of the sheet that fits: ${isoDay(answer.first!)}`;
  return { ...answer, quirk: 'codes in another layout', done };
}

function lastDay(day: Day, { layout }: LayoutChoice): Day {
  if (layout.calendar === 'week') return day + 6;
  return layout.calendar === 'ordinal' || layout.pieces.includes('dd') ? day : addMonths(day, 1) - 1;
}

function notRead(problem: Problem, asOf: Day): CodeAnswer {
  const later =
    problem.because === 'codeTooOld' || (problem.because === 'codeOutside' && isLater(problem, asOf));
  return {
    lot: '',
    quirk: later ? 'code later than as-of' : 'unreadable code',
    done: `not read: ${problemText(problem)}`,
  };
}

const isLater = ({ more }: Problem, asOf: Day): boolean => {
  const year = /\d{4}/.exec(String(more?.date ?? ''))?.[0];
  return year !== undefined && Number(year) >= dayParts(asOf).year;
};

// 03-24 becomes 1 March 2024 in one spreadsheet, 24 March of the running year in another.
function fromDateCell(cell: Cell): CodeAnswer {
  const { day } = readDate(cell, { asOf: 0 });
  if (day === undefined) return { lot: '', quirk: 'unreadable code' };
  if (dayParts(day).day === 1) return turned(day);
  const done = `not read: the cell shows ${isoDay(day)}, and what was typed is lost`;
  return { lot: '', quirk: 'code turned to a date', done };
}

function fromMonthName(cell: Cell, asOf: Day): CodeAnswer | undefined {
  if (typeof cell !== 'string' || !/^[a-z]{3,9}[ .-]\d{2}(\d{2})?$/i.test(cell.trim())) return undefined;
  const { day } = readDate(cell, { asOf });
  return day === undefined || day > asOf + 31 ? undefined : turned(day);
}

const turned = (day: Day): CodeAnswer => ({
  first: day,
  last: addMonths(day, 1) - 1,
  lot: '',
  quirk: 'code turned to a date',
  done: `read as ${isoDay(day).slice(0, 7)}; a lot, if there was one, is lost`,
});

const codesOfMaker = (maker: string): string => (maker === '' ? 'codes' : `codes of maker ${maker}`);

function report(
  lines: Lines,
  line: number,
  cell: Cell,
  { quirk, done }: CodeAnswer,
  maker: string,
  findings: Findings,
): void {
  findings.add(lines.rows[line]!, {
    kind: quirk!,
    column: lines.head('code'),
    given: shownCell(cell),
    group: `${codesOfMaker(maker)}: ${quirk}`,
    ...(done === undefined ? {} : { done }),
  });
}

type Meanings = (maker: string, layouts: readonly string[]) => readonly string[];

function reportChoices(
  lines: Lines,
  makers: readonly string[],
  choices: ReadonlyMap<string, LayoutChoice>,
  meanings: Meanings,
  findings: Findings,
): void {
  for (const [maker, choice] of choices) {
    if (choice.named || choice.read === 0) continue;
    const usual = choice.layout.text === DEFAULT_LAYOUT;
    if (usual && choice.rival === undefined) continue;
    const column = lines.head('code');
    findings.add(lines.rows[makers.indexOf(maker)]!, {
      ...doubtOf(maker, choice, meanings),
      column,
      count: choice.count,
    });
  }
}

function doubtOf(maker: string, { layout, rival, read, all, count }: LayoutChoice, meanings: Meanings) {
  const group = codesOfMaker(maker);
  const [given, said] = [
    `${count} ${group}`,
    `read as ${layout.text} (fits ${Math.round((100 * read) / all)} %)`,
  ];
  const layouts = [layout.text, rival?.text ?? DEFAULT_LAYOUT];
  const subject = { about: 'layout', maker, layouts, meanings: meanings(maker, layouts) } as const;
  const found = { given, group, subject, setting: 'layouts' };
  if (rival === undefined)
    return { ...found, kind: 'codes in another layout', done: `${said}, not ${DEFAULT_LAYOUT}` } as const;
  const done = `${said}; ${rival.text} reads them too, to other dates: say which is right`;
  return { ...found, kind: 'code reads two ways', done } as const;
}
