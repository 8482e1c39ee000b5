import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import type { Engine } from '../../../../taskpane/host/workbook/functions.ts';
import { patchFormulaData } from '../../../../taskpane/host/workbook/formulaDataPatch.ts';
import { PATCHED_RELEASE } from '../../../../taskpane/host/workbook/indexPatch.ts';

type Cells = Record<number, Record<number, object | null>>;

const standing: Cells = { 0: { 0: { v: 1 }, 1: { f: '=A1', v: 1 } }, 1: { 1: { si: 'x', v: 2 } } };
const sheet = { getCellRaw: (row: number, column: number) => standing[row]?.[column] };
const service = { getUnit: () => ({ getSheetBySheetId: () => sheet }) };

/** How often the engine looks through its sheets where cells are written. */
function looks(cells: Cells, version = PATCHED_RELEASE): number {
  let count = 0;
  class Model {
    readonly _univerInstanceService = service;
    updateFormulaData(...given: readonly unknown[]): object {
      expect(given).toEqual(['book', 'sheet', cells]);
      count += 1;
      return {};
    }
  }
  patchFormulaData({
    FormulaDataModel: Model,
    UniverFormulaEnginePlugin: { version },
  } as unknown as Engine);
  new Model().updateFormulaData('book', 'sheet', cells);
  return count;
}

describe('writing cells', () => {
  it('looks through the sheets for no plain value in place of another', () => {
    expect(looks({ 0: { 0: { v: 3, f: null, si: null } }, 7: { 2: { v: 'a' } } })).toBe(0);
  });

  it.each<[string, Cells]>([
    ['a formula comes', { 5: { 5: { f: '=A1' } } }],
    ['a copy of one comes', { 5: { 5: { si: 'x' } } }],
    ['one is written over', { 0: { 1: { v: 3 } } }],
    ['a copy of one is cleared', { 1: { 1: null } }],
  ])('looks through them where %s', (_, cells) => {
    expect(looks(cells)).toBe(1);
  });

  it('is left as it is in another release of the engine', () => {
    expect(looks({ 7: { 2: { v: 'a' } } }, '0.26.0')).toBe(1);
  });

  it('goes by names that the installed engine has', () => {
    const engine = createRequire(import.meta.url)('@univerjs/engine-formula') as Engine;
    const model = engine.FormulaDataModel as unknown as { readonly prototype: object };
    expect(model.prototype).toHaveProperty('updateFormulaData');
    expect(String(model)).toContain('this._univerInstanceService');
  });
});
