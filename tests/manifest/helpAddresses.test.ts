import { describe, expect, it } from 'vitest';
import { page } from '../../docs/generate/page.ts';
import described from '../../functions/functions.json' with { type: 'json' };
import { withHelpAddresses } from '../../manifest/helpAddresses.ts';
import { textOf } from '../house/sourceFiles.ts';

const ADDRESS = 'https://addins.example.org/crankbook';
const metadata = withHelpAddresses(described, ADDRESS);

describe('the help of the functions', () => {
  it('is at the heading of each in the page that is served', () => {
    const headings = new Set(
      [...page(textOf('docs/functions.md')).matchAll(/ id="([^"]+)"/g)].map(([, id]) => id),
    );
    for (const each of metadata.functions as readonly { readonly helpUrl?: string }[]) {
      const [file, heading] = each.helpUrl!.split('#');
      expect(file).toBe(`${ADDRESS}/docs/functions.html`);
      expect(headings.has(heading!), heading).toBe(true);
    }
  });

  it('changes nothing else of the metadata', () => {
    const without = metadata.functions.map((each) => ({ ...each, helpUrl: undefined }));
    expect({ ...metadata, functions: without }).toEqual(described);
    expect(JSON.stringify(metadata).length).toBeLessThan(1_000_000);
  });
});
