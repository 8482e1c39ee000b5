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
import { UniverSheetsTableUIPlugin } from '@univerjs/sheets-table-ui';
import type { FormulaSettings, StartedWorkbook } from './engine.ts';
import { formulaSettings } from './engine.ts';
import { TABLE_SETTINGS } from './tables.ts';

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

/** Serials and codes are texts made of digits, and meant so: no marks in every cell. The page says where the focus is. */
const QUIET = {
  disableAutoFocus: true,
  disableTextFormatAlert: true,
  disableTextFormatMark: true,
  sheets: { disableForceStringAlert: true, disableForceStringMark: true },
} as const;

function ownSettings(plugin: unknown): object | undefined {
  if (plugin === UniverSheetsTablePlugin) return TABLE_SETTINGS;
  // A table's name would cover the row above its heads.
  return plugin === UniverSheetsTableUIPlugin ? { hideAnchor: true } : undefined;
}

type Registered = readonly [new (...needed: never[]) => Plugin, object?];

function registerPlugins(univer: core.Univer, container: HTMLElement, formula: FormulaSettings): void {
  const presets = [
    UniverSheetsCorePreset({ container, formula, ...QUIET }),
    UniverSheetsDrawingPreset(),
    UniverSheetsTablePreset(),
  ];
  for (const plugin of presets.flatMap(({ plugins }) => plugins as readonly unknown[])) {
    const [made, settings] = (Array.isArray(plugin) ? plugin : [plugin]) as unknown as Registered;
    univer.registerPlugin(made as never, { ...settings, ...ownSettings(made) } as never);
  }
}
