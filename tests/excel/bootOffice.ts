import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import vm from 'node:vm';

const require = createRequire(import.meta.url);
const FOLDER = require.resolve('@microsoft/office-js/dist/office.js').replace(/office\.js$/, '');
const ORIGIN = 'https://localhost/';

/** The globals that the library sets in its page. */
export type OfficeGlobals = {
  readonly Office: typeof Office;
  readonly Excel: typeof Excel;
  readonly OfficeExtension: typeof OfficeExtension;
  readonly CustomFunctions: typeof CustomFunctions;
};

/** The line between the library and the program that shows its page: texts of JSON, both ways. */
export type Bridge = {
  sendMessageToHost: (message: string) => void;
  /** Set by the library. */
  onMessageFromHost?: (message: string) => void;
};

// Compiled once for all boots of a test file.
const compiled = new Map<string, vm.Script>();

function scriptOf(file: string): vm.Script {
  const known = compiled.get(file);
  if (known !== undefined) return known;
  const script = new vm.Script(readFileSync(FOLDER + file, 'utf8'), { filename: file });
  compiled.set(file, script);
  return script;
}

type LoadedScript = { src: string; onload?: () => void; onerror?: () => void };

/** A document that can load the library's further files from its package, and nothing else. */
function pageDocument(run: (file: string) => void): object {
  const first = { src: `${ORIGIN}office.js`, getAttribute: () => null };
  const load = (script: LoadedScript): void => {
    const file = script.src.slice(ORIGIN.length).toLowerCase();
    if (!script.src.startsWith(ORIGIN)) throw new Error(`the library asked for ${script.src}`);
    setTimeout(() => {
      run(file);
      script.onload?.();
    });
  };
  return {
    getElementsByTagName: (tag: string) => (tag === 'script' ? [first] : [{ appendChild: load }]),
    createElement: () => ({ setAttribute: () => undefined }),
    addEventListener: () => undefined,
    cookie: '',
    URL: ORIGIN,
    referrer: '',
    readyState: 'complete',
  };
}

function pageGlobals(host: object, bridge: Bridge, run: (file: string) => void): vm.Context {
  const page: Record<string, unknown> = {
    ...{ console, setTimeout, clearTimeout, setInterval, clearInterval, performance, TextEncoder, URL },
    external: host,
    _richApiNativeBridge: bridge,
    document: pageDocument(run),
    location: {
      href: ORIGIN,
      search: '',
      hash: '',
      protocol: 'https:',
      hostname: 'localhost',
      host: 'localhost',
    },
    navigator: { userAgent: 'test', platform: 'Win32', language: 'en-US' },
    history: { replaceState: null, pushState: null },
    name: '',
    addEventListener: () => undefined,
    removeEventListener: () => undefined,
  };
  for (const self of ['window', 'self', 'top', 'parent']) page[self] = page;
  return vm.createContext(page);
}

/** The page after the library has booted: its globals, and a way to run another script in it. */
export type OfficePage = { readonly globals: OfficeGlobals; readonly run: (script: string) => void };

/** Boots the unmodified library in a page of its own and answers when it is ready. */
export async function bootOffice(host: object, bridge: Bridge): Promise<OfficePage> {
  const run = (file: string): void => void scriptOf(file).runInContext(context);
  const context = pageGlobals(host, bridge, run);
  run('office.js');
  const globals = context as unknown as OfficeGlobals;
  await globals.Office.onReady();
  // The library carries this check of requirement sets and leaves it off.
  const inner = globals.OfficeExtension as unknown as { CommonUtility: { _doApiNotSupportedCheck: boolean } };
  inner.CommonUtility._doApiNotSupportedCheck = true;
  return { globals, run: (script) => void vm.runInContext(script, context) };
}
