import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import described from '../functions/functions.json' with { type: 'json' };
import { deploymentAddress, manifestFacts } from './facts.ts';
import { withHelpAddresses } from './helpAddresses.ts';
import { jsonManifest } from './jsonManifest.ts';
import { xmlManifest } from './xmlManifest.ts';

const DIST = fileURLToPath(new URL('../dist/', import.meta.url));

const USAGE = `Writes dist/manifest.xml and dist/manifest.json for the place from which dist/ is served, and the address of each
function's help into dist/functions.json.

  npm run manifest -- --address https://addins.example.org/crankbook
`;

/** Writes both manifests beside the build that they describe. */
function writeManifests(args: readonly string[]): void {
  const { values } = parseArgs({ args: [...args], options: { address: { type: 'string' } } });
  if (values.address === undefined) throw new Error(USAGE);
  const facts = manifestFacts(deploymentAddress(values.address));
  mkdirSync(DIST, { recursive: true });
  writeFileSync(`${DIST}manifest.xml`, xmlManifest(facts));
  writeFileSync(`${DIST}manifest.json`, `${JSON.stringify(jsonManifest(facts), null, 2)}\n`);
  writeFileSync(`${DIST}functions.json`, JSON.stringify(withHelpAddresses(described, facts.address)));
  process.stdout.write(
    `Written for ${facts.address}: dist/manifest.xml, dist/manifest.json, dist/functions.json\n`,
  );
}

try {
  writeManifests(process.argv.slice(2));
} catch (error) {
  process.stderr.write(`${(error as Error).message}\n`);
  process.exitCode = 2;
}
