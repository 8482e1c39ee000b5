import { basename } from 'node:path';
import { evaluateFormulas } from '../host/workbook/formulas.ts';
import type { HeadlessWorkbook } from '../host/workbook/headlessWorkbook.ts';
import { startHeadless, stopHeadless } from '../host/workbook/headlessWorkbook.ts';
import type { WorkbookFile } from '../host/xlsx/workbookFile.ts';
import { isFormula } from '../host/workbook/syntax.ts';
import { Refusal } from './exit.ts';
import { readBytes } from './files.ts';
import { parsedOptions, valueOr } from './options.ts';
import { toolVersion } from './toolVersion.ts';

const USAGE = `Evaluates formulas, one line of JSON for each.

  npm run -s formula -- [--sheet FILE.csv|.xlsx] [--tab NAME] '=CRANK.STATEOFCHARGE(12.6)' ['=…' …]

  --sheet FILE   loads a file; its cells can be referred to (A2:A100), its first sheet is the active one
  --tab NAME     makes another sheet of the file the active one
  --version, --help

A number, text or truth value; rows of them for an answer that spills; an error as
{"error":"#VALUE!","message":"…"}. Exit 0 done (error values too), 1 the file can't be used, 2 wrong usage.
`;

const OPTIONS = {
  sheet: { type: 'string' },
  tab: { type: 'string' },
  version: { type: 'boolean' },
  help: { type: 'boolean' },
} as const;

const toStderr = (sentence: string): void => void process.stderr.write(`${sentence}\n`);

/** Evaluates formulas as the arguments say; answers what goes to stdout, and warns of what a file is not. */
export async function formulaCommand(args: readonly string[], warn = toStderr): Promise<string> {
  const { values: given, positionals: formulas } = parsedOptions(args, OPTIONS);
  if (given.help) return USAGE;
  if (given.version) return `${toolVersion()}\n`;
  if (formulas.length === 0) throw new Refusal(2, 'at least one formula is needed; see --help');
  if (given.tab !== undefined && given.sheet === undefined) throw new Refusal(2, '--tab needs --sheet');
  const wrong = formulas.find((formula) => !formula.startsWith('='));
  if (wrong !== undefined) throw new Refusal(2, `a formula begins with =; given ${wrong}`);
  const file = given.sheet === undefined ? undefined : await fileFrom(given.sheet);
  file?.warnings.forEach((sentence) => warn(sentence));
  const active = activeSheet(file, given.tab);
  const workbook = startHeadless();
  try {
    refuseUnparsed(workbook, formulas);
    const answers = await evaluateFormulas(workbook, file?.sheets ?? [], active, formulas, file?.names);
    return answers.map((answer) => `${JSON.stringify(answer)}\n`).join('');
  } finally {
    stopHeadless(workbook);
  }
}

async function fileFrom(path: string): Promise<WorkbookFile> {
  const bytes = readBytes(path);
  // Loaded only where there is a file: a formula alone shall answer at once.
  const { readWorkbookFile } = await import('../host/xlsx/workbookFile.ts');
  return valueOr(await readWorkbookFile(bytes, basename(path)), 1);
}

function activeSheet(file: WorkbookFile | undefined, tab: string | undefined): string | undefined {
  if (file === undefined || tab === undefined) return file?.sheets[0]?.name;
  const sheet = file.sheets.find(({ name }) => name.toLowerCase() === tab.toLowerCase());
  if (sheet !== undefined) return sheet.name;
  throw new Refusal(
    1,
    `there is no sheet ${tab}; the file has ${file.sheets.map(({ name }) => name).join(', ')}`,
  );
}

function refuseUnparsed(workbook: HeadlessWorkbook, formulas: readonly string[]): void {
  const wrong = formulas.find((formula) => !isFormula(workbook, formula));
  if (wrong !== undefined) throw new Refusal(2, `this formula can't be parsed: ${wrong}`);
}
