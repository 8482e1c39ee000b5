import { createRequire } from 'node:module';
import type * as CoreModule from '@univerjs/core';
import type { Univer } from '@univerjs/core';
import type * as FacadeModule from '@univerjs/core/facade';
import type * as PresetModule from '@univerjs/preset-sheets-node-core';
import type * as NumbersModule from '@univerjs/sheets-numfmt';
import type * as TablesModule from '@univerjs/sheets-table';
import type { CellError } from '../../../functions/cell.ts';
import type { StartedWorkbook } from './engine.ts';
import { formulaSettings } from './engine.ts';
import type { Engine } from './functions.ts';
import type { Contents } from './snapshot.ts';
import { snapshotOf } from './snapshot.ts';
import { forgetParsed } from './syntax.ts';
import { TABLE_SETTINGS } from './tables.ts';

// The engine's modules for Node are CommonJS; loading them as ES modules fails on one of their dependencies.
const require = createRequire(import.meta.url);

/** The built-in workbook running without a screen. */
export type HeadlessWorkbook = StartedWorkbook;

/** A value of a formula: scalar, error with its sentence, or rows of them where it spills. */
export type FormulaScalar = string | number | boolean | CellError;
export type FormulaAnswer = FormulaScalar | readonly (readonly FormulaScalar[])[];

/** Starts the engine with every cell function registered; an opened file is calculated at once. */
export function startHeadless(): HeadlessWorkbook {
  const core = require('@univerjs/core') as typeof CoreModule;
  const facade = require('@univerjs/core/facade') as typeof FacadeModule;
  const engine = require('@univerjs/engine-formula') as Engine;
  const { sentences, formula } = formulaSettings(engine);
  const univer = new core.Univer({
    locale: core.LocaleType.EN_US,
    locales: { [core.LocaleType.EN_US]: englishWords() },
    logLevel: core.LogLevel.SILENT,
  });
  registerPlugins(univer, formula);
  return { univer, api: facade.FUniver.newAPI(univer), core, engine, sentences };
}

function englishWords(): Record<string, never> {
  const words = require('@univerjs/preset-sheets-node-core/locales/en-US') as { default?: object };
  return (words.default ?? words) as Record<string, never>;
}

function registerPlugins(univer: Univer, formula: object): void {
  const preset = require('@univerjs/preset-sheets-node-core') as typeof PresetModule;
  const numbers = require('@univerjs/sheets-numfmt') as typeof NumbersModule;
  const tables = require('@univerjs/sheets-table') as typeof TablesModule;
  require('@univerjs/sheets-table/facade');
  for (const plugin of preset.UniverSheetsNodeCorePreset({ formula }).plugins) {
    if (Array.isArray(plugin)) univer.registerPlugin(plugin[0], plugin[1]);
    else univer.registerPlugin(plugin);
  }
  univer.registerPlugin(numbers.UniverSheetsNumfmtPlugin);
  univer.registerPlugin(tables.UniverSheetsTablePlugin, TABLE_SETTINGS as never);
}

let opened = 0;

/** Opens a workbook in place of the last one and waits until everything in it has been calculated. */
export async function openHeadless(workbook: HeadlessWorkbook, contents: Contents): Promise<void> {
  const { api, engine, sentences } = workbook;
  const open = api.getActiveWorkbook();
  if (open !== null) api.disposeUnit(open.getId());
  sentences.clear();
  forgetParsed(new engine.LexerTreeBuilder());
  // The engine keeps formulas that it has prepared under the workbook's id: a new one can't meet those of the last.
  opened += 1;
  const data = snapshotOf(contents, `workbook${opened}`);
  await calculated(workbook, () => api.createWorkbook(data));
}

/** Runs a change and waits for the end of the calculation that it starts. */
export function calculated({ api }: HeadlessWorkbook, change: () => void): Promise<void> {
  return new Promise((resolve) => {
    const end = api.getFormula().calculationEnd(() => {
      end.dispose();
      resolve();
    });
    change();
  });
}

/** Ends the engine, so that the process can end. */
export function stopHeadless({ univer }: HeadlessWorkbook): void {
  univer.dispose();
}
