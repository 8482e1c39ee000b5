import { headingAddress } from '../docs/generate/page.ts';
import { NAMESPACE } from '../functions/list.ts';

type Described = { readonly id: string; readonly helpUrl?: string };

/** The functions' metadata with the address of each one's help: its heading in the pages that are served with the add-in. */
export function withHelpAddresses<D extends { readonly functions: readonly Described[] }>(
  metadata: D,
  address: string,
): D {
  const functions = metadata.functions.map((each) => ({
    ...each,
    helpUrl: `${address}/docs/functions.html#${headingAddress(`${NAMESPACE}.${each.id}`)}`,
  }));
  return { ...metadata, functions };
}
