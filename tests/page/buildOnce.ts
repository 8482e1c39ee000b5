import { buildPage } from '../../taskpane/commandLine/buildPage.ts';
import { BUILT } from './builtPage.ts';

/** Builds the page once for all tests of a run. */
export async function setup(): Promise<void> {
  const failure = await buildPage(BUILT);
  if (failure !== undefined) throw new Error(`the page could not be built:\n${failure}`);
}
