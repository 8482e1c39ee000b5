import { rmSync } from 'node:fs';
import { buildPage, buildParts } from '../../taskpane/commandLine/buildPage.ts';
import { BUILT } from './builtPage.ts';
import { BUILT_PANE } from './excelWindow.ts';

/** Builds the page, and the pane for Excel with Microsoft's library beside it, once for all tests of a run. */
export async function setup(): Promise<void> {
  const failure = await buildPage(BUILT);
  if (failure !== undefined) throw new Error(`the page could not be built:\n${failure}`);
  // What an older build left behind would be counted and read.
  rmSync(BUILT_PANE, { recursive: true, force: true });
  const paneFailure = await buildParts(BUILT_PANE, ['functions', 'pane'], 'own');
  if (paneFailure !== undefined) throw new Error(`the pane could not be built:\n${paneFailure}`);
}
