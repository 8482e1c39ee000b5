import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { writeXlsx } from 'hucre/xlsx';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Refusal } from '../../taskpane/commandLine/exit.ts';
import { formulaCommand } from '../../taskpane/commandLine/formulaCommand.ts';
import { ROOT } from '../house/sourceFiles.ts';

const folder = mkdtempSync(join(tmpdir(), 'formula-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const FLEET_CSV = ['code,volts,tested', '0324,12.6,2026-03-15', '1E234,20,2026-01-31', '0524-9,,'].join(
  '\r\n',
);

beforeAll(async () => {
  writeFileSync(join(folder, 'fleet.csv'), FLEET_CSV);
  writeFileSync(join(folder, 'fleet.ods'), 'PK');
  const workbook = {
    dateSystem: '1904' as const,
    namedRanges: [{ name: 'CrankAsOf', range: 'Fleet!$A$2' }],
    sheets: [
      { name: 'Fleet', rows: [['made'], [new Date('2026-03-15T00:00Z')]] },
      {
        name: "North's store",
        rows: [['volts'], [12.6], [12.2]],
        tables: [{ name: 'Store', range: 'A1:A3', columns: [{ name: 'volts' }] }],
      },
    ],
  };
  writeFileSync(join(folder, 'fleet.xlsx'), await writeXlsx(workbook));
});

/** Runs the command as a user types it, in the folder with the files. */
function typed(...args: string[]) {
  const command = ['--prefix', ROOT, 'run', '-s', 'formula', '--', ...args];
  const { status, stdout, stderr } = spawnSync('npm', command, {
    cwd: folder,
    encoding: 'utf8',
    maxBuffer: 1e9,
  });
  return { status, stdout, stderr };
}

const answersIn = (stdout: string): unknown[] =>
  stdout
    .split('\n')
    .slice(0, -1)
    .map((line) => JSON.parse(line) as unknown);

describe('npm run -s formula', () => {
  it('prints one line of JSON for each formula, in order, and nothing else', () => {
    const { status, stdout, stderr } = typed(
      '=CRANK.STATEOFCHARGE(12.60)',
      '=CRANK.LOTNUMBER("0324-0017")',
      '=1=1',
      '=SEQUENCE(2,2)',
      '=CRANK.STATEOFCHARGE({12.6;20})',
      '=1/0',
      '=D9&""',
      '=CRANK.NOSUCHTHING(1)',
    );
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout.endsWith('\n')).toBe(true);
    expect(answersIn(stdout)).toEqual([
      expect.closeTo(0.734, 3),
      '0017',
      true,
      [
        [1, 2],
        [3, 4],
      ],
      [[expect.closeTo(0.734, 3)], [{ error: '#VALUE!', message: expect.stringContaining('24 V set') }]],
      { error: '#DIV/0!', message: '' },
      '',
      { error: '#NAME?', message: '' },
    ]);
  });

  it('loads a .csv at A1, by a path relative to where it was typed', () => {
    const { status, stdout } = typed(
      '--sheet',
      'fleet.csv',
      '=A2',
      '=CRANK.STATEOFCHARGE(B2:B4)',
      '=fleet!A3',
      '=C2',
    );
    expect(status).toBe(0);
    expect(answersIn(stdout)).toEqual([
      '0324',
      [[expect.closeTo(0.734, 3)], [expect.objectContaining({ error: '#VALUE!' })], ['']],
      '1E234',
      '2026-03-15',
    ]);
  });

  it('loads every sheet of an .xlsx, its tables and names, and warns on stderr', () => {
    const formulas = ['=A2', '=CrankAsOf', '=Fleet!A2', '=ROWS(CRANK.STATEOFCHARGE(Store[volts]))'];
    const { status, stdout, stderr } = typed('--sheet', 'fleet.xlsx', '--tab', "north's store", ...formulas);
    expect(status).toBe(0);
    expect(answersIn(stdout)).toEqual([12.6, 46096, 46096, 2]);
    expect(stderr).toMatch(/counts its dates from 1904.*\n$/);
  });

  it('writes a long answer whole', () => {
    const { status, stdout } = typed('=SEQUENCE(60000,3)');
    expect(status).toBe(0);
    expect((answersIn(stdout)[0] as number[][]).at(-1)).toEqual([179_998, 179_999, 180_000]);
  });

  it('ends quietly when the reader of its answer goes away', () => {
    const shell = `npm --prefix '${ROOT}' run -s formula -- '=SEQUENCE(60000,3)' | head -c 8`;
    expect(spawnSync('sh', ['-c', shell], { encoding: 'utf8' })).toMatchObject({
      stdout: '[[1,2,3]',
      stderr: '',
    });
  });

  it('gives its exit code and a sentence on stderr, and nothing on stdout', () => {
    const cases: [number, RegExp, string[]][] = [
      [1, /^nosuch\.csv can't be read: there is no such file\n$/, ['--sheet', 'nosuch.csv', '=1']],
      [2, /^this formula can't be parsed: =SUM\(1\n$/, ['=SUM(1']],
    ];
    for (const [code, sentence, args] of cases) {
      expect(typed(...args)).toEqual({ status: code, stdout: '', stderr: expect.stringMatching(sentence) });
    }
  });
});

describe('what the command refuses', () => {
  const refusal = (...args: string[]): Promise<unknown> =>
    formulaCommand(args, () => {}).catch((error: unknown) => error);

  it.each([
    ['no formula', 2, /at least one formula/, []],
    ['a formula without =', 2, /begins with =; given SUM\(1\)/, ['SUM(1)']],
    ['an option that there isn’t', 2, /--colour/, ['--colour', '=1']],
    ['--tab without --sheet', 2, /--tab needs --sheet/, ['--tab', 'Fleet', '=1']],
    ['an empty formula', 2, /can't be parsed: =$/, ['=']],
    ['two values side by side', 2, /can't be parsed: =1 2$/, ['=1', '=1 2']],
    ['semicolons between arguments', 2, /can't be parsed: =SUM\(1;2\)$/, ['=SUM(1;2)']],
    ['a quote left open', 2, /can't be parsed/, ['="abc']],
    ['a kind of file that is not read', 1, /save it as \.xlsx/, ['--sheet', join(folder, 'fleet.ods'), '=1']],
    [
      'a sheet that the file lacks',
      1,
      /no sheet South; the file has Fleet, North's store/,
      ['--sheet', join(folder, 'fleet.xlsx'), '--tab', 'South', '=1'],
    ],
  ] as [string, number, RegExp, string[]][])('%s', async (_, code, sentence, args) => {
    const error = await refusal(...args);
    expect(error).toBeInstanceOf(Refusal);
    expect((error as Refusal).code).toBe(code);
    expect((error as Refusal).message).toMatch(sentence);
  });

  it('but tells how it is used, and its version', async () => {
    expect(await formulaCommand(['--help'])).toMatch(/npm run -s formula -- .*--sheet/s);
    expect(await formulaCommand(['--version'])).toMatch(/^\D+\d+\.\d+\.\d+\n$/);
  });
});

describe('a large sheet', () => {
  it('of 20,000 rows and 12 columns is read and calculated in seconds', async () => {
    const line = (index: number): string =>
      `03${10 + (index % 15)}-${index},${11.6 + (index % 100) / 80},${'x,'.repeat(9)}1`;
    const path = join(folder, 'large.csv');
    writeFileSync(
      path,
      ['code,volts', ...Array.from({ length: 20_000 }, (_, index) => line(index))].join('\n'),
    );
    const out = await formulaCommand(['--sheet', path, '=CRANK.LOTNUMBER(A2:A20001)', '=COUNT(B:B)']);
    expect(answersIn(out)[1]).toBe(20_000);
    expect((answersIn(out)[0] as string[][]).at(-1)).toEqual(['19999']);
  });
});
