import { createRequire } from 'node:module';
import { existsSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { manifestFacts } from '../../manifest/facts.ts';
import { jsonManifest, JSON_SCHEMA_VERSION } from '../../manifest/jsonManifest.ts';
import { ROOT, textOf } from '../house/sourceFiles.ts';

const PACKAGE = 'node_modules/@microsoft/app-manifest';
// The schema is of draft 4, for which the package brings its own checker.
const require = createRequire(`${ROOT}${PACKAGE}/package.json`);
type Check = ((given: unknown) => boolean) & { readonly errors?: unknown };
type Checker = new (options: object) => { compile: (schema: object) => Check };
const Ajv = (require('ajv-draft-04') as { default: Checker }).default;

const schema = JSON.parse(
  textOf(`${PACKAGE}/build/json-schemas/teams/v${JSON_SCHEMA_VERSION}/MicrosoftTeams.schema.json`),
) as object;
const check = new Ajv({ strict: false, allErrors: true, validateFormats: false }).compile(schema);

type Shape = {
  icons: Record<string, string>;
  extensions: { runtimes: { customFunctions: { namespace: { id: string } } }[] }[];
};
const manifest = jsonManifest(manifestFacts('https://addins.example.org/crankbook')) as Shape;

describe('the unified manifest', () => {
  it('keeps to the published schema', () => {
    expect(check(manifest) || check.errors).toBe(true);
  });

  it('would be told where it does not', () => {
    const wrong = structuredClone(manifest);
    wrong.extensions[0]!.runtimes[0]!.customFunctions.namespace.id = '1 2';
    expect(check(wrong)).toBe(false);
  });

  it('names icons that exist', () => {
    for (const icon of Object.values(manifest.icons))
      expect(existsSync(`${ROOT}manifest/${icon}`), icon).toBe(true);
    // They go with it into the archive that is uploaded.
    for (const icon of Object.values(manifest.icons))
      expect(textOf('docs/install.md')).toContain(`\`${icon}\``);
  });
});
