import { beforeEach, describe } from 'vitest';
import { fillingContract } from './contractFilling.ts';
import { recordsContract } from './contractRecords.ts';
import { sheetsContract } from './contractSheets.ts';
import type { HostUnderTest } from './contractWorkbook.ts';

export type { HostUnderTest, StartSheet } from './contractWorkbook.ts';
export { START, valueOf } from './contractWorkbook.ts';

/**
 * What every host of the pane must do. Each test says what a user would lose if it failed.
 * @param name  of the host
 * @param make  opens START in a fresh host
 */
export function sheetHostContract(name: string, make: () => Promise<HostUnderTest>): void {
  describe(`${name}: the pane's contract`, () => {
    let tested: HostUnderTest;
    beforeEach(async () => {
      tested = await make();
    });
    const now = (): HostUnderTest => tested;
    sheetsContract(now);
    fillingContract(now);
    recordsContract(now);
  });
}
