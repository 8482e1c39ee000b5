import { existsSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import described from '../functions/functions.json' with { type: 'json' };
import { deploymentAddress, manifestFacts } from './facts.ts';
import { withHelpAddresses } from './helpAddresses.ts';
import { jsonManifest } from './jsonManifest.ts';
import { xmlManifest } from './xmlManifest.ts';

const DIST = fileURLToPath(new URL('../dist', import.meta.url));

const USAGE = `Writes dist/manifest.xml and dist/manifest.json for the place from which dist/ is served, and the address of each
function's help into dist/functions.json.

  npm run manifest -- --address https://addins.example.org/crankbook [--folder dist]

  --folder  where the build is, if it is not in dist/
`;

const OPTIONS = { address: { type: 'string' }, folder: { type: 'string', default: DIST } } as const;

/** Writes both manifests beside the build that they describe. */
function writeManifests(args: readonly string[]): void {
  const { values } = parseArgs({ args: [...args], options: OPTIONS });
  if (values.address === undefined) throw new Error(USAGE);
  const { folder } = values;
  const facts = manifestFacts(deploymentAddress(values.address));
  // Each build empties its folder: manifests written before it would be lost, and would name files that are not there.
  if (!existsSync(`${folder}/taskpane.html`))
    throw new Error(
      `There is no build in ${folder} for manifests to describe: npm run build first, then this again.`,
    );
  writeFileSync(`${folder}/manifest.xml`, xmlManifest(facts));
  writeFileSync(`${folder}/manifest.json`, `${JSON.stringify(jsonManifest(facts), null, 2)}\n`);
  writeFileSync(`${folder}/functions.json`, JSON.stringify(withHelpAddresses(described, facts.address)));
  process.stdout.write(
    `Written for ${facts.address}: manifest.xml, manifest.json and functions.json in ${folder}\n`,
  );
}

try {
  writeManifests(process.argv.slice(2));
} catch (error) {
  process.stderr.write(`${(error as Error).message}\n`);
  process.exitCode = 2;
}
