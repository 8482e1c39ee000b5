import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { evaluateFormulas } from '../../../../taskpane/host/workbook/formulas.ts';
import type { HeadlessWorkbook } from '../../../../taskpane/host/workbook/headlessWorkbook.ts';
import { startHeadless, stopHeadless } from '../../../../taskpane/host/workbook/headlessWorkbook.ts';
import { isFormula } from '../../../../taskpane/host/workbook/syntax.ts';
import { sheetOf } from '../../../functions/askedSheet.ts';

let workbook: HeadlessWorkbook;
beforeAll(() => {
  workbook = startHeadless();
});
afterAll(() => stopHeadless(workbook));

describe('one engine for several workbooks', () => {
  const book = (volts: number) => [
    sheetOf('Fleet', [
      ['volts', volts],
      [volts, 'spare'],
    ]),
  ];
  const evaluate = (volts: number, refersTo: string) =>
    evaluateFormulas(
      workbook,
      book(volts),
      'Fleet',
      ['=Reading', '=Fleet!A2'],
      [{ name: 'Reading', refersTo }],
    );

  it('gives each its own cells and names, though the formulas are the same and were parsed before', async () => {
    expect(isFormula(workbook, '=Reading')).toBe(true);
    expect(await evaluate(12.6, 'Fleet!$B$1')).toEqual([12.6, 12.6]);
    expect(await evaluate(12.2, 'Fleet!$A$2')).toEqual([12.2, 12.2]);
    expect(await evaluate(12.2, 'Fleet!$B$2')).toEqual(['spare', 12.2]);
  });

  it('evaluates nothing, the same formula twice, and more formulas than one row holds', async () => {
    expect(await evaluateFormulas(workbook, [], undefined, [])).toEqual([]);
    expect(await evaluateFormulas(workbook, [], undefined, ['=1+1', '=1+1'])).toEqual([2, 2]);
    const many = Array.from({ length: 450 }, (_, index) => `=SEQUENCE(1,2)*${index}`);
    const answers = await evaluateFormulas(workbook, [], undefined, many);
    expect(answers).toEqual(many.map((_, index) => [[index, 2 * index]]));
  });

  it('keeps a name for one sheet to that sheet', async () => {
    const sheets = [sheetOf('North', [[1]]), sheetOf('South', [[2]])];
    const names = [
      { name: 'Limit', refersTo: 'North!$A$1', scope: 'North' },
      { name: '_xlnm.Print_Area', refersTo: 'North!$A$1:$A$1' },
      { name: 'Lost', refersTo: '#REF!' },
    ];
    expect(await evaluateFormulas(workbook, sheets, 'North', ['=Limit', '=Lost'], names)).toEqual([
      1,
      { error: '#NAME?', message: '' },
    ]);
  });
});

describe('what can be parsed', () => {
  const formulas = [
    [
      '=1',
      '=12.50',
      '=-5%',
      '=.5',
      '=1.5e-3',
      '=(1+2)*3',
      '=1 + 2',
      '= 1+\n 2',
      '="a b; c"',
      '="a""b c"',
      '=#N/A',
    ],
    [
      '=A1',
      '=$A$1:B$3',
      '=A:A',
      '=1:1',
      "='North''s store'!A1:B2",
      '=Units[volts]',
      '=Units[[#Headers],[a b]]',
    ],
    [
      '=SUM( 1 , 2 )',
      '=IF(A1="",,1)',
      '=LET(x, 1, x + 1)',
      '=LAMBDA(a, a*2)(3)',
      '=SUM(A1:A3,B1)',
      '=TODAY()',
    ],
    ['={1,"x;y";2,"z"}', '=FILTER(A1:A3, (A1:A3>1)*(B1:B3<2))', '=Über*2', '=x_1.y', '=--TRUE', '=A1&" "&B1'],
  ].flat();
  it.each(formulas)('%s', (formula) => expect(isFormula(workbook, formula)).toBe(true));

  const broken = [
    ['=', '= ', '=SUM(', '=SUM(1,2', '=SUM(1,2))', '=(1', '=)', '="abc', '={1,2', '=1+', '=*1', '=1+*2'],
    ['=1 2', '=FOO BAR', '="a" b', '=TRUE FALSE', '=SUM(1;2)', '=1..2', '=1.2.3', '=1x', '=?'],
  ].flat();
  it.each(broken)('but not %s', (formula) => expect(isFormula(workbook, formula)).toBe(false));
});
