import { readFileSync } from 'node:fs';
import described from '../functions/functions.json' with { type: 'json' };
import { NAMESPACE } from '../functions/list.ts';

/** What both manifests say, before either has its form. Addresses are whole and start with https. */
export type ManifestFacts = {
  readonly id: string;
  readonly version: string;
  readonly name: string;
  readonly provider: string;
  /** At most 80 characters, for lists; and the whole of it. */
  readonly summary: string;
  readonly description: string;
  readonly namespace: string;
  /** Where everything is served from, without a slash at its end. */
  readonly address: string;
  readonly requirements: readonly { readonly set: string; readonly version: string }[];
  readonly ribbon: {
    readonly tab: string;
    readonly group: string;
    readonly label: string;
    readonly title: string;
    readonly tip: string;
  };
  readonly getStarted: { readonly title: string; readonly description: string };
  readonly functionCount: number;
};

/** The sizes in which the icon is drawn, in pixels. */
export const ICON_SIZES = [16, 32, 64, 80, 128] as const;

const VERSION = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8')) as {
  readonly version: string;
};

// Made once and never changed: Excel knows an add-in, and where its functions' answers come from, by this.
const ID = '6b8f5f0e-3a0c-4d0c-9b0a-52f1c1f4a7d3';

/** The facts for a place of deployment. */
export function manifestFacts(address: string): ManifestFacts {
  return {
    id: ID,
    version: `${VERSION.version}.0`,
    name: 'Crankbook',
    provider: 'Crankbook',
    summary: 'Starting batteries of a fleet: age, charge, verdict, and what to buy when',
    description:
      'Date codes to ages, rest volts to charge, readings to verdicts, and a replacement forecast for the budget, in the inventory sheet that is already there.',
    namespace: NAMESPACE,
    address,
    // The floor: what every Excel that runs functions and pane in one runtime has had since 2020.
    requirements: [
      { set: 'CustomFunctionsRuntime', version: '1.3' },
      { set: 'SharedRuntime', version: '1.1' },
      { set: 'ExcelApi', version: '1.12' },
    ],
    ribbon: {
      tab: 'TabHome',
      group: 'Batteries',
      label: 'Crankbook',
      title: 'Open Crankbook',
      tip: 'Opens the pane beside the sheet: inventory, bench, life and plan of starting batteries.',
    },
    getStarted: {
      title: 'Crankbook is ready',
      description: 'Type =CRANK. in a cell, or open the pane on the Home tab.',
    },
    functionCount: described.functions.length,
  };
}

/**
 * An address for deployment as it is written into the manifests.
 * @throws Error  with a sentence, when it is no https address or carries a query, a fragment or a name and password
 */
export function deploymentAddress(given: string): string {
  const url = URL.canParse(given) ? new URL(given) : undefined;
  const plain = url?.search === '' && url.hash === '' && url.username === '' && url.password === '';
  if (url?.protocol !== 'https:' || !plain)
    throw new Error(
      `--address must be an https address such as https://addins.example.org/crankbook; given: ${given}`,
    );
  return url.href.replace(/\/+$/, '');
}
