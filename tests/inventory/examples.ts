import type { FindingKind } from '../../src/inventory/findingKinds.ts';
import type { SheetRows } from '../../src/inventory/inventory.ts';
import type { GivenSettings } from '../../src/inventory/settings.ts';
import type { Row } from './sheets.ts';

/** Rows of an example: alone, or with what is known about their sheet and said in the settings. */
export type Example =
  | readonly Row[]
  | (Partial<Omit<SheetRows, 'rows'>> & {
      readonly rows: readonly Row[];
      readonly settings?: GivenSettings;
      readonly tests?: readonly Row[];
      readonly charges?: readonly Row[];
    });

/** For each kind: sheets in which it is found, and sheets much like them in which it is not. */
export type Examples = Partial<
  Record<FindingKind, { readonly yes: readonly Example[]; readonly no: readonly Example[] }>
>;
