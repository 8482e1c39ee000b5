import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { stateOfCharge } from '../../functions/electrochemistry.ts';
import type { Cell } from '../../functions/cell.ts';
import { BUG, isCellError } from '../../functions/cell.ts';
import type { FileCell } from '../../taskpane/host/xlsx/workbookFile.ts';
import type { Engine } from '../../taskpane/host/workbook/functions.ts';
import { engineFunctions } from '../../taskpane/host/workbook/functions.ts';
import { newSentences, sentenceIn } from '../../taskpane/host/workbook/sentences.ts';
import { askedSheet, sheetOf } from './askedSheet.ts';

const VOLTS: FileCell[][] = [
  ['code', 'volts', 'celsius', 'tested', 'kind'],
  ['0324-117', 12.6, 0, '2026-03-15', 'AGM'],
  ['1E234', 20, null, 46096, 'gel'],
  ['0524-9', null, 25, '', ''],
  [524, { error: '#N/A', message: '' }, 30, '03/04/2026', 'AGM'],
  ['total', 3, '', '', ''],
];
const units = {
  name: 'Units',
  range: { startRow: 0, startColumn: 0, endRow: 5, endColumn: 4 },
  heads: VOLTS[0] as string[],
  totalRow: true,
};
const sheets = [
  sheetOf('Fleet', VOLTS, [units]),
  sheetOf("North's store", [
    [12.7, 'AGM'],
    [12.2, 'flooded'],
  ]),
];
const names = [
  { name: 'CrankAsOf', refersTo: 'Fleet!$D$3' },
  { name: 'Readings', refersTo: "'North''s store'!$A$1:$A$2" },
];
const { ask } = askedSheet(sheets, names);

const charge = (volts: number, celsius?: number): Cell =>
  stateOfCharge([[volts]], [[celsius ?? null]] as never, null as never)[0]![0] as Cell;
const tooHigh = {
  error: '#VALUE!',
  message: '20.00 V is the voltage of a whole 24 V set: measure each battery by itself (6 to 16 V)',
};

describe('what arrives from a formula', () => {
  const literals = ask('=CRANK.STATEOFCHARGE(12.60)');
  const powers = ask('=CRANK.STATEOFCHARGE(126E-1)');
  const leading = ask('=CRANK.STATEOFCHARGE(+12.60,-05.0)');
  it('numbers however they are written', () => {
    expect([literals(), powers()]).toEqual([charge(12.6), charge(12.6)]);
    expect(leading()).toBe(charge(12.6, -5));
  });

  const text = ask('=CRANK.STATEOFCHARGE("12.60")');
  it('a number in quotes as text', () => {
    expect(text()).toEqual({ error: '#VALUE!', message: 'volts must be a number; given "12.60"' });
  });

  const codes = ask('=CRANK.LOTNUMBER({"0324-0017";"0324-1E3"})');
  const dayFirst = ask('=CRANK.FISCALPERIOD("03/04/2026")');
  const isoDay = ask('=CRANK.FISCALPERIOD("2026-03-15")');
  it('codes and dates in quotes as they were typed', () => {
    expect(codes()).toEqual([['0017'], ['1E3']]);
    expect(dayFirst()).toMatchObject({ error: '#VALUE!', message: expect.stringContaining('"03/04/2026"') });
    expect(isoDay()).toBe('FY2026');
  });

  const constant = ask('=CRANK.STATEOFCHARGE({12.60;1.27E1},25,{"AGM";"AGM"})');
  const commas = ask('=CRANK.MAKERCODE({"9ZZ98","a,b;c"})');
  const truths = ask('=CRANK.VERDICT({1000;1000},980,12.8,25,{TRUE;FALSE})');
  it('array constants, commas in quotes and truth values among them', () => {
    expect(constant()).toEqual([[charge(12.6)], [charge(12.7)]]);
    expect(commas()).toMatchObject([['9ZZ98', { message: expect.stringContaining('"a,b;c"') }]]);
    expect(truths()).toEqual([['Serviceable'], ['Serviceable']]);
  });

  const chosen = ask('=IF(TRUE,"1E234")');
  const joined = ask('=CONCAT("03/04/2026",", ",12.60)');
  const stacked = ask('=CRANK.LOTNUMBER(VSTACK("0324-0017",IFERROR("0324-1E3","")))');
  const found = ask('=XLOOKUP("1E3",{"1000","1E3"},{1,2})');
  const summed = ask('=SUM("5",1)+YEAR("2026-03-15")');
  it('texts through functions of the sheet, which compute with them where they always did', () => {
    expect([chosen(), joined(), found()]).toEqual(['1E234', '03/04/2026, 12.6', 2]);
    expect(stacked()).toEqual([['0017'], ['1E3']]);
    expect(summed()).toBe(2032);
  });

  const symbol =
    '"[)>"&CHAR(30)&"06"&CHAR(29)&"17V9ZZ98"&UNICHAR(29)&"1PBX6T-100"&CHAR(29)&"S0012"&CHAR(30)&CHAR(4)';
  const scanned = ask(`=CRANK.LABELSCAN(${symbol},"serial")`);
  const characters = ask('=CODE(CHAR({28;65;1}))');
  it('the control characters of a label’s symbol', () => {
    expect(scanned()).toBe('0012');
    expect(characters()).toEqual([[28], [65], [1]]);
  });

  const leftOut = ask('=CRANK.STATEOFCHARGE(12.6,,,"F")');
  const blankCell = ask('=CRANK.STATEOFCHARGE(12.6,C3)');
  const zeroCell = ask('=CRANK.STATEOFCHARGE(12.6,C2)');
  it('nothing for what is left out or empty, and a real 0 as 0', () => {
    expect([leftOut(), blankCell()]).toEqual([charge(12.6), charge(12.6)]);
    expect(zeroCell()).toBe(charge(12.6, 0));
  });

  const wide = ask('=CRANK.STATEOFCHARGE(12.6,25,"AGM",{"C","F"})');
  const single = ask('=CRANK.STATEOFCHARGE(12.6,25,"AGM",{"C"})');
  const twoOrThree = ask('=CRANK.MONTHSINSERVICE(1)');
  const tooMany = ask('=CRANK.STATEOFCHARGE(12.6,25,"AGM","C",1)');
  it('one value where one is wanted, and no argument too many', () => {
    expect(wide()).toEqual({ error: '#VALUE!', message: 'unit takes one value, not a range' });
    expect(single()).toBe(charge(12.6));
    expect(twoOrThree()).toMatchObject({ message: 'CRANK.MONTHSINSERVICE takes 2 or 3 arguments; given 1' });
    expect(tooMany()).toMatchObject({ message: 'CRANK.STATEOFCHARGE takes 1 to 4 arguments; given 5' });
  });
});

describe('what arrives from cells', () => {
  const column = ask('=CRANK.STATEOFCHARGE(B2:B5)');
  it('a column with a bad, an empty and an error cell', () => {
    expect(column()).toEqual([[charge(12.6)], [tooHigh], [''], [{ error: '#N/A', message: '' }]]);
  });

  const lots = ask('=CRANK.LOTNUMBER(A2:A4)');
  it('texts that look like numbers as text', () => {
    expect(lots()).toMatchObject([['117'], { 0: { error: '#VALUE!' } }, ['9']]);
  });

  const structured = ask('=CRANK.STATEOFCHARGE(Units[volts],Units[celsius])');
  it('a table’s column without its total row', () => {
    expect(structured()).toEqual([[charge(12.6, 0)], [tooHigh], [''], [{ error: '#N/A', message: '' }]]);
  });

  const otherTab = ask("=CRANK.STATEOFCHARGE('North''s store'!A1:A2,25,'North''s store'!B1:B2)");
  const named = ask('=CRANK.STATEOFCHARGE(Readings)');
  const asOf = ask('=CRANK.FISCALPERIOD(CrankAsOf)');
  it('another sheet, and names of the workbook', () => {
    expect((otherTab() as number[][])[0]).toEqual([charge(12.7)]);
    expect(named()).toEqual([[charge(12.7)], [charge(12.2)]]);
    expect(asOf()).toBe('FY2026');
  });

  const whole = ask('=COUNT(B:B)');
  const row = ask('=COUNTA(2:2)');
  it('whole columns and rows, which the formulas themselves stand outside', () => {
    expect([whole(), row()]).toEqual([3, 5]);
  });
});

describe('errors', () => {
  const picked = ask('=INDEX(CRANK.STATEOFCHARGE(B2:B5),2)');
  const sorted = ask('=SORT(CRANK.STATEOFCHARGE({20;12.6;3}))');
  const filtered = ask('=FILTER(CRANK.STATEOFCHARGE({20;12.6;3}),{1;0;1})');
  const chosen = ask('=IF(TRUE,CRANK.STATEOFCHARGE(20),1)');
  const summed = ask('=SUM(CRANK.STATEOFCHARGE({12.6;20}))');
  const nested = ask('=CRANK.STATEOFCHARGE(CRANK.RESTVOLTAGE({2;0.5}))');
  it('keep their sentence through functions of the sheet, each its own', () => {
    expect([picked(), chosen(), summed()]).toEqual([tooHigh, tooHigh, tooHigh]);
    expect(sorted()).toMatchObject([
      [charge(12.6)],
      [tooHigh],
      [{ message: 'volts is 3; allowed is 6 to 16 V' }],
    ]);
    expect(filtered()).toMatchObject([[tooHigh], [{ message: 'volts is 3; allowed is 6 to 16 V' }]]);
    expect(nested()).toMatchObject([
      [{ message: 'charge is 2; allowed is 0 to 1' }],
      [expect.closeTo(0.5, 9)],
    ]);
  });

  const own = ask('=1/0');
  const other = ask('=IFERROR(CRANK.STATEOFCHARGE(20),1/0)');
  const unknown = ask('=CRANK.NOSUCHTHING(1)');
  it('of the sheet itself have no sentence', () => {
    expect(own()).toEqual({ error: '#DIV/0!', message: '' });
    expect(other()).toEqual({ error: '#DIV/0!', message: '' });
    expect(unknown()).toEqual({ error: '#NAME?', message: '' });
  });

  const remade = ask('=TEXT(CRANK.STATEOFCHARGE(20),"0.00")');
  it('that a function of the sheet makes anew carry the last sentence of their formula', () => {
    expect(remade()).toEqual(tooHigh);
  });

  it('never leave a function by being thrown', () => {
    const engine = createRequire(import.meta.url)('@univerjs/engine-formula') as Engine;
    const described = { id: 'BROKEN', description: '', parameters: [] };
    const broken = {
      id: 'BROKEN',
      run: () => {
        throw new Error('a fault');
      },
    };
    const { classes } = engineFunctions(engine, [broken], [described], newSentences());
    const answer = new classes[0]![0]('CRANK.BROKEN').calculate() as ReturnType<
      typeof engine.ErrorValueObject.create
    >;
    expect([answer.getValue(), sentenceIn(answer.getCustomData(), '#VALUE!')]).toEqual(['#VALUE!', BUG]);
  });
});

describe('answers', () => {
  const third = ask('=1/3');
  const thirds = ask('={1;2}/3');
  it('come with every digit', () => {
    expect(third()).toBe(1 / 3);
    expect(thirds()).toEqual([[1 / 3], [2 / 3]]);
  });

  const truth = ask('=1=1');
  const text = ask('="0324"');
  const empty = ask('=""');
  const blanks = ask('=IF({1;0},"",C5:C6)');
  it('are truth values, texts and empty texts', () => {
    expect([truth(), text(), empty()]).toEqual([true, '0324', '']);
    expect(blanks()).toEqual([[''], ['']]);
  });

  const wide = ask('=SEQUENCE(1,60)');
  const neighbour = ask('=COLUMNS(SEQUENCE(1,60))');
  const long = ask('=SEQUENCE(30000)');
  it('spill as far as they like', () => {
    expect((wide() as number[][])[0]).toHaveLength(60);
    expect(neighbour()).toBe(60);
    expect(long()).toHaveLength(30_000);
  });

  const table = ask('=CRANK.CONVERTRATING(400,"DIN","SAE")');
  it('of tables have no errors or gaps', () => {
    expect((table() as Cell[][]).flat().some(isCellError)).toBe(false);
  });
});
