import { describe, expect, it } from 'vitest';
import type { HostUnderTest } from './contractWorkbook.ts';
import { askingOf, becauseOf, givenUp, valueOf } from './contractWorkbook.ts';

/** Columns added beside an inventory. */
export function fillingContract(now: () => HostUnderTest): void {
  const host = () => now().host;
  const { infoOf, read, fill, column } = askingOf(now);
  describe('filling columns', () => {
    it('writes values beside the inventory, with heads and formats', async () => {
      valueOf(await host().fill(fill({})));
      expect(await column('Fleet', 3, 6)).toEqual(['Checked', 1, 2, null, 4, 5]);
      expect(await now().numberCodeAt({ sheet: 'Fleet', row: 1, column: 3 })).toBe('#,##0');
    });

    it('keeps values as they are given: text stays text, dates are dates', async () => {
      const columns = [
        { head: 'Code', format: 'text', values: ['0514', '1E3', '=1+1', '', null] },
        { head: 'Made', format: 'date', values: [45_000, null, null, null, 45_001] },
      ] as const;
      valueOf(await host().fill(fill({ columns })));
      expect(await column('Fleet', 3, 6)).toEqual(
        ['Code', '0514', '1E3', '=1+1', expect.anything(), null].map((value, index) =>
          index === 4 ? expect.toSatisfy((each) => each === '' || each === null) : value,
        ),
      );
      const { dateCells } = await read('Fleet', 6, 5);
      expect([...dateCells.get(4)!]).toEqual([1, 5]);
    });

    it('spills one formula over all rows, or edits do not follow', async () => {
      const columns = [{ head: 'Double', format: 'thousandths', formula: 'B2:B3*2' }] as const;
      valueOf(await host().fill(fill({ sheet: 'Store', as: 'spill', rows: 2, column: 2, columns })));
      expect(await column('Store', 2, 3)).toEqual(['Double', 25.2, 24.4]);
      expect(await now().formulaAt({ sheet: 'Store', row: 1, column: 2 })).toContain('B2:B3');
      expect(await now().formulaAt({ sheet: 'Store', row: 2, column: 2 })).toBeUndefined();
      expect((await infoOf('Store')).used).toMatchObject({ rows: 3, columns: 3 });
    });

    it('answers with our own functions, errors with their code', async () => {
      const columns = [
        { head: 'Charge', format: 'share', formula: 'CRANK.STATEOFCHARGE(B2:B3,25)' },
      ] as const;
      valueOf(await host().fill(fill({ sheet: 'Store', as: 'spill', rows: 2, column: 2, columns })));
      const [, full, low] = await column('Store', 2, 3);
      expect(full).toBeGreaterThan(low as number);
      const wrong = [{ head: 'Bad', format: 'share', formula: 'CRANK.STATEOFCHARGE(A2:A3,25)' }] as const;
      valueOf(await host().fill(fill({ sheet: 'Store', as: 'spill', rows: 2, column: 3, columns: wrong })));
      const [, error] = await column('Store', 3, 3);
      expect(error).toMatchObject({ error: '#VALUE!' });
    });

    it('makes calculated columns of a table, which grows, so that new rows and filters take them along', async () => {
      const columns = [
        { head: 'Double', format: 'thousandths', formula: 'Units[[#This Row],[Volts]]*2' },
        { head: 'Triple', format: 'thousandths', formula: '[@Volts]*3' },
      ] as const;
      const request = fill({ as: 'tableColumn', table: 'Units', columns });
      valueOf(await host().fill(request));
      expect((await column('Fleet', 3, 6)).slice(0, 3)).toEqual(['Double', 25.2, 24.8]);
      expect((await column('Fleet', 4, 6))[1]).toBeCloseTo(37.8, 10);
      expect(await now().formulaAt({ sheet: 'Fleet', row: 5, column: 3 })).toMatch(/Volts\]/);
      const [table] = (await infoOf('Fleet')).tables;
      expect(table!.heads).toEqual(['Serial', 'Volts', 'Fitted', 'Double', 'Triple']);
    });

    it('refuses columns away from their table, rows that are not its own, and a table that is gone', async () => {
      const columns = [{ head: 'Double', format: 'plain', formula: '[@Volts]*2' }] as const;
      const as = { as: 'tableColumn', table: 'Units', columns } as const;
      expect(becauseOf(await host().fill(fill({ ...as, column: 5 })))).toBe('columnsNotBesideTable');
      expect(becauseOf(await host().fill(fill({ ...as, rows: 3 })))).toBe('rowsNotOfTable');
      expect(becauseOf(await host().fill(fill({ ...as, table: 'Gone' })))).toBe('tableNotThere');
    });

    it('never overwrites what someone wrote, unless the user has said yes', async () => {
      const request = fill({ column: 2 });
      expect(becauseOf(await host().fill(request))).toBe('cellsNotEmpty');
      expect(await column('Fleet', 2, 6)).toEqual(['Fitted', 45_000, 45_100, null, 45_300, 45_400]);
      valueOf(await host().fill({ ...request, overwrite: true }));
      expect(await column('Fleet', 2, 6)).toEqual(['Checked', 1, 2, null, 4, 5]);
    });

    it('leaves a protected sheet alone and says so', async () => {
      const request = fill({ sheet: 'Locked', rows: 1, column: 2 });
      expect(becauseOf(await host().fill(request))).toBe('sheetProtected');
      expect(await column('Locked', 2, 2)).toEqual([null, null]);
    });

    it('takes everything back when it is given up, the wider table too', async () => {
      const columns = [{ head: 'Double', format: 'plain', formula: '[@Volts]*2' }] as const;
      const request = fill({ as: 'tableColumn', table: 'Units', columns });
      await expect(host().fill(request, givenUp())).rejects.toThrow();
      expect(await column('Fleet', 3, 6)).toEqual([null, null, null, null, null, null]);
      expect((await infoOf('Fleet')).tables[0]!.heads).toEqual(['Serial', 'Volts', 'Fitted']);
    });

    it('is one step to undo, or the user picks cells clean by hand', async () => {
      const { undo } = now();
      if (undo === undefined) return;
      valueOf(await host().fill(fill({ column: 2, overwrite: true })));
      await undo();
      expect(await column('Fleet', 2, 6)).toEqual(['Fitted', 45_000, 45_100, null, 45_300, 45_400]);
      expect(await now().numberCodeAt({ sheet: 'Fleet', row: 1, column: 2 })).toBe('yyyy-mm-dd');
    });
  });
}
