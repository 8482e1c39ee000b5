import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ExcelRig } from './excelRig.ts';
import { startExcel, useGlobals } from './excelRig.ts';
import { PROGRAMS } from './hostWindow.ts';
import { typeRows } from './modelState.ts';

/** Stands for the worker: what it is asked is kept, nothing is answered. */
const asked: unknown[] = [];
class SilentWorker {
  postMessage(message: unknown): void {
    asked.push(message);
  }
  addEventListener(): void {}
  terminate(): void {}
}

let rig: ExcelRig;
let hiddenText: string | undefined;
const text = (): string => document.body.textContent ?? '';

beforeAll(async () => {
  rig = await startExcel(['Fleet'], PROGRAMS.current, false);
  useGlobals(rig);
  typeRows(rig.workbook.sheets[0]!, [
    ['Serial', 'Manufacture code', 'Site'],
    ['A1', '0324-117', 'North'],
  ]);
  Object.assign(globalThis, { Worker: SilentWorker });
  document.body.innerHTML = '<main id="pane"></main>';
  await import('../../taskpane/main.ts');
  await new Promise((done) => setTimeout(done, 200));
  hiddenText = text();
  rig.userOpensPane();
  for (let waited = 0; asked.length === 0 && waited < 200; waited += 1)
    await new Promise((done) => setTimeout(done, 25));
});
afterAll(() => document.body.replaceChildren());

describe('the pane in Excel', () => {
  it('is not loaded while the page runs for the functions alone', () => expect(hiddenText).toBe(''));

  it('draws its views and reads the sheet that the user stands on', () => {
    for (const view of ['Inventory', 'Bench', 'Life', 'Plan']) expect(text()).toContain(view);
    expect(JSON.stringify(asked)).toContain('0324-117');
    expect(rig.traffic.notModelled).toEqual([]);
  });
});
