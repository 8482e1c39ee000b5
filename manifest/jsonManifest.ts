import type { ManifestFacts } from './facts.ts';

/** The version of the schema by which the unified manifest is written and checked. */
export const JSON_SCHEMA_VERSION = '1.30';

/** The unified manifest, for Excel on the web and for subscriptions. */
export function jsonManifest(facts: ManifestFacts): object {
  const { id, version, name, provider, summary, description, address } = facts;
  return {
    $schema: `https://developer.microsoft.com/json-schemas/teams/v${JSON_SCHEMA_VERSION}/MicrosoftTeams.schema.json`,
    manifestVersion: JSON_SCHEMA_VERSION,
    id,
    // Three parts here, four in the other manifest: the schema wants it so.
    version: version.replace(/\.0$/, ''),
    name: { short: name, full: name },
    description: { short: summary, full: description },
    developer: {
      name: provider,
      websiteUrl: `${address}/docs/install.html`,
      privacyUrl: `${address}/docs/privacy.html`,
      termsOfUseUrl: `${address}/docs/licence.html`,
    },
    icons: { color: 'icons/icon192.png', outline: 'icons/outline32.png' },
    accentColor: '#21333F',
    localizationInfo: { defaultLanguageTag: 'en-us', additionalLanguages: [] },
    authorization: {
      permissions: { resourceSpecific: [{ name: 'Document.ReadWrite.User', type: 'Delegated' }] },
    },
    validDomains: [new URL(address).host],
    extensions: [extension(facts)],
  };
}

function extension(facts: ManifestFacts): object {
  const capabilities = facts.requirements.map(({ set, version }) => ({ name: set, minVersion: version }));
  return {
    requirements: { scopes: ['workbook'], capabilities },
    runtimes: [runtime(facts)],
    ribbons: [ribbonOf(facts)],
    getStartedMessages: [
      {
        requirements: { scopes: ['workbook'] },
        title: facts.getStarted.title,
        description: facts.getStarted.description,
        learnMoreUrl: `${facts.address}/docs/install.html`,
      },
    ],
  };
}

function runtime({ address, namespace }: ManifestFacts): object {
  return {
    id: 'crankbookRuntime',
    type: 'general',
    code: { page: `${address}/taskpane.html`, script: `${address}/functions.js` },
    lifetime: 'long',
    actions: [{ id: 'openPane', type: 'openPage' }],
    customFunctions: {
      namespace: { id: namespace, name: namespace },
      metadataUrl: `${address}/functions.json`,
    },
  };
}

function ribbonOf({ address, ribbon }: ManifestFacts): object {
  const icons = [16, 32, 80].map((size) => ({ size, url: `${address}/icons/icon${size}.png` }));
  const button = {
    id: 'paneButton',
    type: 'button',
    label: ribbon.label,
    icons,
    supertip: { title: ribbon.title, description: ribbon.tip },
    actionId: 'openPane',
  };
  return {
    contexts: ['default'],
    requirements: { scopes: ['workbook'] },
    tabs: [
      {
        builtInTabId: ribbon.tab,
        groups: [{ id: 'batteriesGroup', label: ribbon.group, icons, controls: [button] }],
      },
    ],
  };
}
