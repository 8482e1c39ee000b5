import { describe, expect, it } from 'vitest';
import type { HostUnderTest } from './contractWorkbook.ts';
import { askingOf, becauseOf, cell, followed, givenUp, reportSheet, valueOf } from './contractWorkbook.ts';

/** Reading sheets, adding them, replacing them. */
export function sheetsContract(now: () => HostUnderTest): void {
  const host = () => now().host;
  const { infoOf, namesNow, read } = askingOf(now);
  describe('reading', () => {
    it('knows sheets, tables, used blocks and protection, or the pane would look in the wrong place', async () => {
      expect(await namesNow()).toEqual(['Fleet', 'Store', 'Locked']);
      const fleet = await infoOf('Fleet');
      const block = { row: 0, column: 0, rows: 6, columns: 3 };
      expect(fleet).toMatchObject({ hidden: false, isProtected: false, used: block });
      expect(fleet.tables).toEqual([{ name: 'Units', block, heads: ['Serial', 'Volts', 'Fitted'] }]);
      expect((await infoOf('Locked')).isProtected).toBe(true);
    });

    it('tells text, number, truth, 0 and nothing apart, or a serial 0514 becomes another battery', async () => {
      const { rows } = await read('Fleet', 6, 3);
      expect(rows[1]).toEqual(['0514', 12.6, 45_000]);
      expect(rows[3]).toEqual(['S3', null, null]);
      expect(rows[4]).toEqual(['S4', 0, 45_300]);
      expect(rows[5]).toEqual(['S5', true, 45_400]);
    });

    it('knows dates by their format and rows that are hidden, or ages and counts are silently wrong', async () => {
      const { dateCells, hiddenRows } = await read('Fleet', 6, 3);
      expect([...dateCells.keys()]).toEqual([2]);
      expect([...dateCells.get(2)!]).toEqual([1, 2, 4, 5]);
      expect([...hiddenRows]).toEqual([3]);
      const inner = { row: 2, column: 2, rows: 2, columns: 1 };
      const contents = valueOf(await host().readBlock({ sheet: 'Fleet', block: inner }));
      expect([...contents.dateCells.get(0)!]).toEqual([0]);
      expect([...contents.hiddenRows]).toEqual([1]);
    });

    it('says that a sheet is gone instead of failing, so that the user knows what to choose again', async () => {
      const block = { row: 0, column: 0, rows: 1, columns: 1 };
      expect(becauseOf(await host().readBlock({ sheet: 'Gone', block }))).toBe('sheetNotThere');
      expect(becauseOf(await host().select({ sheet: 'Gone', block }))).toBe('sheetNotThere');
    });

    it('stops reading when it is given up, or the user waits for nothing', async () => {
      const control = new AbortController();
      control.abort();
      const work = { signal: control.signal, progress: () => {} };
      const block = { row: 0, column: 0, rows: 6, columns: 3 };
      await expect(host().readBlock({ sheet: 'Fleet', block }, work)).rejects.toThrow();
    });
  });

  describe('adding sheets', () => {
    it('writes values, live formulas and texts as they are, or the forecast is not what was planned', async () => {
      const work = followed();
      expect(await host().addSheets([reportSheet('Forecast')], work)).toMatchObject({ ok: true });
      const { rows, dateCells } = await read('Forecast', 6, 2);
      expect(rows.map(([first]) => first)).toEqual(['Forecast', 'price', 'twice', 'month', 45_000, 45_031]);
      expect(rows.map((row) => row[1])).toEqual([null, 200, 400, 'note', '=not a formula', '0514']);
      expect([...dateCells.get(0)!]).toEqual([4, 5]);
      const formula = await now().formulaAt({ sheet: 'Forecast', row: 2, column: 1 });
      expect(formula?.replace(/\s/g, '')).toBe('unitPrice*2');
      expect(work.shares.at(-1)).toBe(1);
      const [table] = (await infoOf('Forecast')).tables;
      expect(table).toMatchObject({ heads: ['month', 'note'], block: { row: 3, column: 0, rows: 3 } });
    });

    it('refuses a name that is taken, whatever its case, and leaves that sheet alone', async () => {
      const outcome = await host().addSheets([reportSheet('Forecast'), reportSheet('fleet')]);
      expect(becauseOf(outcome)).toBe('sheetNameTaken');
      expect(await namesNow()).toEqual(['Fleet', 'Store', 'Locked']);
      expect((await read('Fleet', 2, 1)).rows[1]).toEqual(['0514']);
    });

    it('adds two forecasts whose tables and names are called the same, or last year’s is lost', async () => {
      valueOf(await host().addSheets([reportSheet('Forecast')]));
      valueOf(await host().addSheets([reportSheet('Forecast (2)')]));
      const tables = [...(await infoOf('Forecast')).tables, ...(await infoOf('Forecast (2)')).tables];
      expect(new Set(tables.map((table) => table.name.toLowerCase())).size).toBe(2);
      expect((await read('Forecast (2)', 3, 2)).rows[2]).toEqual(['twice', 400]);
    });

    it('lets a formula of one new sheet speak of another', async () => {
      const formula = "SUM('Units of it'!A5:A6)";
      const speaking = reportSheet('Forecast', {
        rows: [[cell(90_031, { formula })]],
        names: [],
        tables: [],
        spans: [],
      });
      valueOf(await host().addSheets([speaking, reportSheet('Units of it')]));
      expect((await read('Forecast', 1, 1)).rows).toEqual([[90_031]]);
    });

    it('leaves the workbook as it was when it is given up, or half a forecast stays behind', async () => {
      const long = Array.from({ length: 5000 }, (_, index) => [cell(index), cell('x')]);
      const sheets = [
        reportSheet('Forecast'),
        reportSheet('Units of it', { rows: long, tables: [], names: [] }),
      ];
      await expect(host().addSheets(sheets, givenUp())).rejects.toThrow();
      expect(await namesNow()).toEqual(['Fleet', 'Store', 'Locked']);
    });
  });

  describe('replacing a sheet', () => {
    it('writes over what was there and leaves nothing of it behind, or old settings come back', async () => {
      valueOf(await host().replaceSheet(reportSheet('Settings')));
      const shorter = reportSheet('Settings', {
        rows: [[cell('years'), cell(5)]],
        names: [],
        tables: [],
        spans: [],
      });
      valueOf(await host().replaceSheet(shorter));
      const { rows } = await read('Settings', 6, 2);
      expect(rows[0]).toEqual(['years', 5]);
      expect(
        rows
          .slice(1)
          .flat()
          .filter((value) => value !== null),
      ).toEqual([]);
      expect((await namesNow()).filter((each) => each === 'Settings')).toHaveLength(1);
    });
  });
}
