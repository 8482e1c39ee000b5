import type * as CoreModule from '@univerjs/core';
import type { Univer } from '@univerjs/core';
import type { FUniver } from '@univerjs/core/facade';
import type { FWorkbook } from '@univerjs/sheets/facade';
import described from '../../../functions/functions.json' with { type: 'json' };
import { functions } from '../../../functions/list.ts';
import type { Engine, EngineFunctions, NamedClass } from './functions.ts';
import { engineFunctions } from './functions.ts';
import { patchFormulaData } from './formulaDataPatch.ts';
import { patchIndex } from './indexPatch.ts';
import { patchLiterals } from './literals.ts';
import type { Sentences } from './sentences.ts';
import { newSentences } from './sentences.ts';
import { textFunctions } from './texts.ts';

/** The engine's own foundation; passed in, for a browser and Node load it in different ways. */
export type Core = typeof CoreModule;

/** The built-in workbook's engine, running with or without a screen. */
export type StartedWorkbook = {
  readonly univer: Univer;
  readonly api: FUniver;
  readonly core: Core;
  readonly engine: Engine;
  readonly sentences: Sentences;
};

/** What the engine is started with. */
export type FormulaSettings = {
  readonly initialFormulaComputing: 0;
  readonly function: NamedClass[];
  readonly description: EngineFunctions['descriptions'];
};

/** Mends the engine and makes every cell function known to it; an opened file is calculated at once. */
export function formulaSettings(engine: Engine): {
  readonly sentences: Sentences;
  readonly formula: FormulaSettings;
} {
  patchIndex(engine);
  patchFormulaData(engine);
  patchLiterals(engine);
  const sentences = newSentences();
  const made = engineFunctions(engine, functions, described.functions, sentences);
  return {
    sentences,
    formula: {
      initialFormulaComputing: 0,
      function: [...textFunctions(engine), ...made.classes],
      description: made.descriptions,
    },
  };
}

/** The workbook that is open; there always is one once the host has begun. */
export function openBook({ api }: StartedWorkbook): FWorkbook {
  const book = api.getActiveWorkbook();
  if (book === null) throw new Error('no workbook is open');
  return book;
}
