import { beforeEach, describe, expect, it } from 'vitest';
import type { ExcelRig } from './excelRig.ts';
import { startExcel, useGlobals } from './excelRig.ts';
import { PROGRAMS } from './hostWindow.ts';
import { typeRows } from './modelState.ts';

let rig: ExcelRig;
beforeEach(async () => {
  rig = await startExcel(['Fleet']);
  useGlobals(rig);
});

const codeOf = (run: Promise<unknown>): Promise<string> =>
  run.then(
    () => 'done',
    (error: { code?: string }) => error.code ?? 'thrown',
  );

describe('the library in front of the workbook in memory', () => {
  it('believes that it is in Excel for Windows and knows its requirement sets', () => {
    expect([Office.context.host, Office.context.platform]).toEqual(['Excel', 'PC']);
    expect(Office.context.requirements.isSetSupported('ExcelApi', '1.20')).toBe(true);
    expect(Office.context.requirements.isSetSupported('ExcelApi', '1.99')).toBe(false);
  });

  it('writes and reads cells as if they were typed', async () => {
    const values = await Excel.run(async (context) => {
      const range = context.workbook.worksheets.getItem('Fleet').getRange('A1:E1');
      range.values = [['0514', "'0514", '=1+1', "'=1+1", '2026-03-15']];
      range.load('values,valueTypes,formulas,numberFormat');
      await context.sync();
      return [range.values, range.valueTypes, range.formulas, range.numberFormat];
    });
    expect(values).toEqual([
      [[514, '0514', 0, '=1+1', 46_096]],
      [['Double', 'String', 'Double', 'String', 'Double']],
      [[514, '0514', '=1+1', '=1+1', 46_096]],
      [['General', 'General', 'General', 'General', 'm/d/yyyy']],
    ]);
  });

  it("raises the library's own errors", async () => {
    const on = (use: (context: Excel.RequestContext) => void) =>
      codeOf(
        Excel.run(async (context) => {
          use(context);
          await context.sync();
        }),
      );
    expect(await on(({ workbook }) => void workbook.worksheets.getItem('none'))).toBe('ItemNotFound');
    expect(await on(({ workbook }) => void workbook.worksheets.add('fleet'))).toBe('ItemAlreadyExists');
    const shape = on(({ workbook }) => {
      workbook.worksheets.getItem('Fleet').getRange('A1:B1').values = [[1, 2, 3]];
    });
    expect(await shape).toBe('InvalidArgument');
    expect(await on(({ workbook }) => workbook.worksheets.getItem('Fleet').calculate(true))).toBe(
      'NotModelled',
    );
    expect(rig.traffic.notModelled).toEqual(['Worksheet.Calculate is not modelled']);
    const unread = Excel.run(async ({ workbook }) => workbook.worksheets.getItem('Fleet').name);
    expect(await codeOf(unread)).toBe('PropertyNotLoaded');
  });

  it('forgets objects that nobody keeps', async () => {
    const range = await Excel.run(async (context) => {
      const inside = context.workbook.worksheets.getItem('Fleet').getRange('A1');
      await context.sync();
      return inside;
    });
    expect(() => range.load('values')).toThrow(/isn't working/);
  });
});

describe('faults', () => {
  const write = (rows: number): Promise<unknown> =>
    Excel.run({ delayForCellEdit: true }, async (context) => {
      const range = context.workbook.worksheets.getItem('Fleet').getRangeByIndexes(0, 0, rows, 10);
      range.values = Array.from({ length: rows }, () => Array<string>(10).fill('1234567890'));
      await context.sync();
    });

  it('refuses a request above 5 MB', async () => {
    expect([await codeOf(write(1_000)), rig.traffic.notModelled]).toEqual(['done', []]);
    expect(await codeOf(write(50_000))).toBe('RequestPayloadSizeLimitExceeded');
  });

  it('waits while a cell is edited, or refuses where waiting was not asked for', async () => {
    rig.faults.isEditing = true;
    const quick = Excel.run(async (context) => {
      context.workbook.worksheets.getItem('Fleet').activate();
      await context.sync();
    });
    expect(await codeOf(quick)).toBe('InvalidOperationInCellEditMode');
    const patient = codeOf(write(1));
    setTimeout(() => rig.userEndsEdit(), 30);
    expect(await patient).toBe('done');
  });

  it('refuses to write on a protected sheet, and loses a connection', async () => {
    const sheet = rig.workbook.sheets[0]!;
    sheet.isProtected = true;
    expect(await codeOf(write(1))).toBe('AccessDenied');
    sheet.isProtected = false;
    rig.resetTraffic();
    rig.faults.lostAt = 1;
    expect(await codeOf(write(1))).toBe('ConnectionFailure');
    expect(await codeOf(write(1))).toBe('done');
  });

  it('lacks what an old program lacks', async () => {
    rig = await startExcel(['Fleet'], PROGRAMS.tooOld);
    useGlobals(rig);
    typeRows(rig.workbook.sheets[0]!, [['Serial'], ['A']]);
    const resize = Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem('Fleet');
      sheet.tables.add('A1:A2', true).resize('A1:B2');
      await context.sync();
    });
    expect(await codeOf(resize)).toBe('ApiNotFound');
  });
});
