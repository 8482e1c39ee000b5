import { describe, expect, it } from 'vitest';
import type { HostUnderTest } from './contractWorkbook.ts';
import { askingOf, becauseOf, valueOf } from './contractWorkbook.ts';

/** Records, names, and where the user stands. */
export function recordsContract(now: () => HostUnderTest): void {
  const host = () => now().host;
  const { infoOf, read, fill, column } = askingOf(now);
  describe('records, names and places', () => {
    const heads = ['Serial', 'Day', 'Volts'];
    const record = (serial: string, day: number, volts: number) =>
      [
        { value: serial, format: 'text' },
        { value: day, format: 'date' },
        { value: volts, format: 'thousandths' },
      ] as const;

    it('makes the sheet of records and adds row under row, or tests of yesterday are overwritten', async () => {
      expect(valueOf(await host().appendRow('Tests', heads, record('0514', 46_000, 12.6)))).toBe(1);
      expect(valueOf(await host().appendRow('Tests', heads, record('S2', 46_001, 12.4)))).toBe(2);
      const { rows, dateCells } = await read('Tests', 3, 3);
      expect(rows).toEqual([heads, ['0514', 46_000, 12.6], ['S2', 46_001, 12.4]]);
      expect([...dateCells.get(1)!]).toEqual([1, 2]);
    });

    it('puts each cell under the head of its own name on a sheet that someone made', async () => {
      expect(
        valueOf(
          await host().appendRow(
            'Store',
            ['Volts', 'Day', 'serial'],
            [
              { value: 12.5, format: 'thousandths' },
              { value: 46_000, format: 'date' },
              { value: 'T3', format: 'text' },
            ],
          ),
        ),
      ).toBe(3);
      const { rows } = await read('Store', 4, 3);
      expect(rows[0]).toEqual(['Serial', 'Volts', 'Day']);
      expect(rows[3]).toEqual(['T3', 12.5, 46_000]);
      expect(rows[1]).toEqual(['T1', 12.6, null]);
    });

    it('adds no record to a protected sheet', async () => {
      expect(becauseOf(await host().appendRow('Locked', ['Serial'], [{ value: 'x', format: 'text' }]))).toBe(
        'sheetProtected',
      );
      expect((await infoOf('Locked')).used).toMatchObject({ rows: 2 });
    });

    it('names a cell, moves the name, and formulas follow it: the as-of day of the whole workbook', async () => {
      expect(valueOf(await host().namedCell('CrankAsOf'))).toBeUndefined();
      const first = { sheet: 'Store', row: 1, column: 1 };
      valueOf(await host().nameCell({ name: 'CrankAsOf', at: first }));
      expect(valueOf(await host().namedCell('CrankAsOf'))).toEqual(first);
      const columns = [{ head: 'Named', format: 'plain', formula: 'CrankAsOf+0' }] as const;
      valueOf(await host().fill(fill({ sheet: 'Store', as: 'spill', rows: 1, column: 2, columns })));
      expect((await column('Store', 2, 2))[1]).toBe(12.6);
      const second = { sheet: 'Store', row: 2, column: 1 };
      valueOf(await host().nameCell({ name: 'CrankAsOf', at: second }));
      expect(valueOf(await host().namedCell('crankasof'))).toEqual(second);
    });

    it('goes where it is told and tells where the user goes, or results can’t be found again', async () => {
      const told: string[] = [];
      const end = host().onSelect(({ sheet, block }) => told.push(`${sheet} ${block.row} ${block.rows}`));
      const at = { sheet: 'Store', block: { row: 1, column: 0, rows: 2, columns: 2 } };
      valueOf(await host().select(at));
      expect(valueOf(await host().workbook()).selected).toEqual(at);
      expect(told.at(-1)).toBe('Store 1 2');
      end();
      valueOf(await host().select({ ...at, sheet: 'Fleet' }));
      expect(told.at(-1)).toBe('Store 1 2');
    });
  });
}
