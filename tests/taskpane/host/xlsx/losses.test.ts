import { openXlsx, saveXlsx } from 'hucre/xlsx';
import { describe, expect, it } from 'vitest';
import { lossesBetween } from '../../../../taskpane/host/xlsx/losses.ts';
import type { Package } from '../../../../taskpane/host/xlsx/package.ts';
import { openPackage, packageBytes, partText, putText } from '../../../../taskpane/host/xlsx/package.ts';
import { addRelation, setFullType } from '../../../../taskpane/host/xlsx/parts.ts';
import type { WorkbookState } from '../../../../taskpane/host/xlsx/save.ts';
import { savedWorkbook } from '../../../../taskpane/host/xlsx/save.ts';
import { storeFromExcelJs, storeFromLibreOffice } from '../storeWorkbooks.ts';

const SHEETS = ['Store', 'Lists', "Quarter's sums"];
const unchanged: WorkbookState = { sheets: SHEETS.map((name) => ({ name, original: name, cells: [] })) };
const changed: WorkbookState = {
  sheets: SHEETS.map((name) => ({ name, original: name, cells: [{ row: 20, column: 0, value: 'new' }] })),
};

const BOOK = 'xl/workbook.xml';
const MACRO_BOOK = 'application/vnd.ms-excel.sheet.macroEnabled.main+xml';

// The order of calculation is the one part that goes: it would be wrong, and programs make it anew.
const NEWER = [
  ['pivotTable', 'xl/pivotTables/pivotTable1.xml'],
  ['threadedComment', 'xl/threadedComments/threadedComment1.xml'],
  ['slicer', 'xl/slicers/slicer1.xml'],
  ['calcChain', 'xl/calcChain.xml'],
] as const;
const EXTENSION =
  '<extLst><ext uri="{78C0D931-6437-407d-A8EE-F0AAD7539E65}"><later:conditionalFormattings xmlns:later="urn:later"/></ext></extLst>';

/** The file with something put in that no writer at hand writes. */
async function altered(bytes: Uint8Array, change: (parts: Package) => Promise<void>): Promise<Uint8Array> {
  const parts = openPackage(bytes);
  await change(parts);
  return packageBytes(parts);
}

const withMacros = (bytes: Uint8Array): Promise<Uint8Array> =>
  altered(bytes, async (parts) => {
    await putText(parts, 'xl/vbaProject.bin', 'a program');
    await addRelation(parts, BOOK, 'vbaProject', 'xl/vbaProject.bin');
    await setFullType(parts, BOOK, MACRO_BOOK);
  });

describe('what is said to be lost', () => {
  it('is nothing where nothing was changed, and then every part is as it was', async () => {
    for (const original of [storeFromLibreOffice(), await storeFromExcelJs()]) {
      const { bytes, lost } = await savedWorkbook(original, unchanged, 'formulas');
      expect(lost).toEqual([]);
      const [before, after] = [openPackage(original), openPackage(bytes)];
      for (const [path, { checksum }] of before)
        if (!['[Content_Types].xml', BOOK, 'xl/styles.xml'].includes(path))
          expect(after.get(path)?.checksum, path).toBe(checksum);
    }
  });

  it('is the macros of an .xlsm, which is saved as a plain workbook', async () => {
    const { bytes, lost } = await savedWorkbook(
      await withMacros(storeFromLibreOffice()),
      changed,
      'formulas',
    );
    expect(lost).toEqual(['its macros: an .xlsx file can hold none']);
    const parts = openPackage(bytes);
    expect(parts.has('xl/vbaProject.bin')).toBe(false);
    expect(await partText(parts, '[Content_Types].xml')).not.toMatch(/macroEnabled|vbaProject/);
  });

  it('is a signature, which would not be true any more', async () => {
    const original = await altered(storeFromLibreOffice(), async (parts) => {
      await putText(parts, '_xmlsignatures/origin.sigs', '');
      await addRelation(parts, '', 'digital-signature/origin', '_xmlsignatures/origin.sigs');
    });
    const { bytes, lost } = await savedWorkbook(original, changed, 'formulas');
    expect(lost).toEqual(['its digital signature: a changed file has to be signed anew']);
    expect(openPackage(bytes).has('_xmlsignatures/origin.sigs')).toBe(false);
  });

  it('names what did not move with inserted rows', async () => {
    const sheets = unchanged.sheets.map((sheet) =>
      sheet.name === 'Store' ? { ...sheet, shifted: true } : sheet,
    );
    const { lost } = await savedWorkbook(storeFromLibreOffice(), { sheets }, 'formulas');
    expect(lost).toHaveLength(1);
    expect(lost[0]).toMatch(/^sheet Store: rows or columns were inserted or deleted, but its /);
    for (const what of [
      'conditional formats',
      'rules for what may be typed',
      'comments',
      'pictures',
      'links',
    ])
      expect(lost[0]).toContain(what);
    expect(lost[0]).not.toContain('charts');
  });

  it('warns of dates from our functions in a file that counts from 1904', async () => {
    const original = await altered(storeFromLibreOffice(), async (parts) => {
      const book = (await partText(parts, BOOK))!;
      await putText(parts, BOOK, book.replace('date1904="false"', 'date1904="true"'));
    });
    const cells = [
      { row: 2, column: 5, value: 45352, formula: 'CRANK.MANUFACTUREDATE(A3)', numberCode: 'yyyy-mm-dd' },
      { row: 3, column: 5, value: 45352 },
    ];
    const sheets = unchanged.sheets.map((sheet) => (sheet.name === 'Store' ? { ...sheet, cells } : sheet));
    const { bytes, lost } = await savedWorkbook(original, { sheets }, 'formulas');
    expect(lost).toEqual([
      'the file counts its dates from 1904: dates that the CRANK functions answer show four years late in it; save them as values',
    ]);
    const xml = await partText(openPackage(bytes), 'xl/worksheets/sheet1.xml');
    expect(xml).toContain('<v>43890</v>');
    expect(xml).toContain('<c r="F4"><v>45352</v></c>');
  });

  it('is nothing of what only newer programs know: pivot tables, threads, rules in extensions', async () => {
    const original = await altered(await storeFromExcelJs(), async (parts) => {
      const sheet = 'xl/worksheets/sheet1.xml';
      for (const [kind, path] of NEWER) {
        await putText(parts, path, `<${kind} xmlns="urn:later"><kept/></${kind}>`);
        await addRelation(parts, kind === 'calcChain' ? BOOK : sheet, kind, path);
      }
      const xml = (await partText(parts, sheet))!;
      await putText(parts, sheet, xml.replace('</worksheet>', `${EXTENSION}</worksheet>`));
    });
    const { bytes, lost } = await savedWorkbook(original, changed, 'formulas');
    expect(lost).toEqual([]);
    const [before, after] = [openPackage(original), openPackage(bytes)];
    for (const [kind, path] of NEWER)
      expect(after.get(path)?.checksum, path).toBe(
        kind === 'calcChain' ? undefined : before.get(path)!.checksum,
      );
    expect(await partText(after, 'xl/worksheets/sheet1.xml')).toContain(`${EXTENSION}</worksheet>`);
  });

  it('is nothing that its user deleted', async () => {
    const original = await storeFromExcelJs();
    const { lost } = await savedWorkbook(original, { sheets: unchanged.sheets.slice(1) }, 'formulas');
    expect(lost).toEqual([]);
  });

  it('is found out by what is in the files: what another writer drops is named', async () => {
    const original = await storeFromExcelJs();
    const dropping = openPackage(await saveXlsx(await openXlsx(original, { readStyles: true })));
    const lost = await lossesBetween(openPackage(original), dropping, unchanged);
    expect(lost).toContain('sheet Store: conditional formats: 3 before, 2 after');
    const parts = openPackage(original);
    const sheet = (await partText(parts, 'xl/worksheets/sheet1.xml'))!;
    await putText(
      parts,
      'xl/worksheets/sheet1.xml',
      sheet.replace(/<dataValidations[\s\S]*<\/dataValidations>/, ''),
    );
    expect(await lossesBetween(openPackage(original), parts, unchanged)).toEqual([
      'sheet Store: rules for what may be typed: 1 before, 0 after',
    ]);
  });
});
