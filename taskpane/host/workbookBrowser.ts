import type { Plugin } from '@univerjs/core';
import * as core from '@univerjs/core';
import { FUniver } from '@univerjs/core/facade';
import * as engine from '@univerjs/engine-formula';
import '@univerjs/preset-sheets-core/lib/index.css';
import { UniverSheetsCorePreset } from '@univerjs/preset-sheets-core';
import sheetWords from '@univerjs/preset-sheets-core/locales/en-US';
import '@univerjs/preset-sheets-drawing/lib/index.css';
import { UniverSheetsDrawingPreset } from '@univerjs/preset-sheets-drawing';
import drawingWords from '@univerjs/preset-sheets-drawing/locales/en-US';
import '@univerjs/preset-sheets-table/lib/index.css';
import { UniverSheetsTablePreset } from '@univerjs/preset-sheets-table';
import tableWords from '@univerjs/preset-sheets-table/locales/en-US';
import { UniverSheetsTablePlugin } from '@univerjs/sheets-table';
import type { FormulaSettings, StartedWorkbook } from './workbookEngine.ts';
import { formulaSettings } from './workbookEngine.ts';
import { TABLE_SETTINGS } from './workbookTables.ts';

/** Starts the grid in an element of the page, with every cell function, its completion and its argument tips. */
export function startBrowser(container: HTMLElement): StartedWorkbook {
  const { sentences, formula } = formulaSettings(engine);
  const univer = new core.Univer({
    locale: core.LocaleType.EN_US,
    locales: { [core.LocaleType.EN_US]: core.mergeLocales(sheetWords, drawingWords, tableWords) },
    logLevel: core.LogLevel.ERROR,
  });
  registerPlugins(univer, container, formula);
  return { univer, api: FUniver.newAPI(univer), core, engine, sentences };
}

type Registered = readonly [new (...needed: never[]) => Plugin, object?];

function registerPlugins(univer: core.Univer, container: HTMLElement, formula: FormulaSettings): void {
  const presets = [
    UniverSheetsCorePreset({ container, formula }),
    UniverSheetsDrawingPreset(),
    UniverSheetsTablePreset(),
  ];
  for (const plugin of presets.flatMap(({ plugins }) => plugins as readonly unknown[])) {
    const [made, settings] = (Array.isArray(plugin) ? plugin : [plugin]) as unknown as Registered;
    const own = (made as unknown) === UniverSheetsTablePlugin ? { ...settings, ...TABLE_SETTINGS } : settings;
    univer.registerPlugin(made as never, own as never);
  }
}
