import JsdomEnvironment from 'jest-environment-jsdom';
import type { Environment } from 'vitest/runtime';
import { populateGlobal } from 'vitest/runtime';

/** Runs a test file in the jsdom window that jest-environment-jsdom sets up. */
const environment: Environment = {
  name: 'jest-environment-jsdom',
  viteEnvironment: 'client',
  async setup(global) {
    const project = {
      projectConfig: { testEnvironmentOptions: {}, rootDir: process.cwd() },
      globalConfig: {},
    };
    const jsdom = new JsdomEnvironment(
      project as never,
      { console, docblockPragmas: {}, testPath: '' } as never,
    );
    await jsdom.setup();
    const { keys, originals } = populateGlobal(global, jsdom.dom!.window as never, { bindFunctions: true });
    return {
      async teardown() {
        keys.forEach((key) => delete global[key]);
        originals.forEach((value, key) => (global[key] = value));
        await jsdom.teardown();
      },
    };
  },
};

export default environment;
