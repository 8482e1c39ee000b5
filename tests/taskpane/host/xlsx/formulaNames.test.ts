import { describe, expect, it } from 'vitest';
import { asksOurs, formulaForFile, formulaForGrid } from '../../../../taskpane/host/xlsx/formulaNames.ts';

const PAIRS: readonly (readonly [grid: string, file: string])[] = [
  ['CRANK.MANUFACTUREDATE(A2:A9)', '_xldudf_CRANK_MANUFACTUREDATE(A2:A9)'],
  ['SUM(A1:A9)', 'SUM(A1:A9)'],
  ['UNIQUE(A1:A9)', '_xlfn.UNIQUE(A1:A9)'],
  ['SORT(FILTER(A1:A9,B1:B9>1))', '_xlfn._xlws.SORT(_xlfn._xlws.FILTER(A1:A9,B1:B9>1))'],
  ['WEIBULL.DIST(1,2,3,TRUE)', '_xlfn.WEIBULL.DIST(1,2,3,TRUE)'],
  ['"UNIQUE(A1)"&\'LET(\'!A1', '"UNIQUE(A1)"&\'LET(\'!A1'],
  ['LET(volts,A1,volts*2)', '_xlfn.LET(_xlpm.volts,A1,_xlpm.volts*2)'],
  ['MAP(A1:A9,LAMBDA(each,each+1))', '_xlfn.MAP(A1:A9,_xlfn.LAMBDA(_xlpm.each,_xlpm.each+1))'],
  ['SUM(Store[Rest voltage, V])', 'SUM(Store[Rest voltage, V])'],
  ['Days+DAYS(A1,B1)', 'Days+_xlfn.DAYS(A1,B1)'],
];

describe('the names of functions in a file', () => {
  it.each(PAIRS)('writes %s as %s', (grid, file) => expect(formulaForFile(grid)).toBe(file));
  it.each(PAIRS)('reads %s back', (grid, file) => expect(formulaForGrid(file)).toBe(grid));

  it('writes ours in capitals, as they were registered', () => {
    expect(formulaForFile('crank.stateofcharge(C3)')).toBe('_xldudf_CRANK_STATEOFCHARGE(C3)');
  });

  it('tells formulas that ask ours from the others', () => {
    expect(asksOurs('1+CRANK.STATEOFCHARGE(C3)')).toBe(true);
    expect(asksOurs('"CRANK.STATEOFCHARGE(C3)"&MYCRANK.X(1)')).toBe(false);
  });
});
