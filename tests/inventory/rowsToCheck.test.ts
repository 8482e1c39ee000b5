import { describe, expect, it } from 'vitest';
import { rowsToCheck } from '../../src/inventory/rowsToCheck.ts';
import { fleet, inventoryFrom, plain } from './sheets.ts';

describe('rows to check', () => {
  const bad = Array.from({ length: 5 }, (_, index) =>
    plain({ 'Date code': `bad${index}`, Maker: '8YY97' }, index),
  );
  const unknown = plain({ Installed: null, 'Date code': null }, 9);
  const groups = rowsToCheck(inventoryFrom([...fleet(), ...bad, unknown]).toCheck);

  it('are grouped by cause, with count, three examples and what happens if nothing is done', () => {
    const codes = groups.find(({ kind }) => kind === 'unreadable code')!;
    expect(codes).toMatchObject({ cause: 'codes of maker 8YY97: unreadable code', count: 5, weight: 4 });
    expect(codes.examples.map(({ given }) => given)).toEqual(['bad0', 'bad1', 'bad2']);
    expect(codes.ifNothing).toContain('age unknown');
  });

  it('stand in the order of their effect, not of their number', () => {
    expect(groups[0]!.kind).toBe('age unknown');
    const weights = groups.map(({ weight }) => weight);
    expect(weights).toEqual([...weights].sort((a, b) => b - a));
  });

  it('count the rows behind a finding about many', () => {
    const rows = fleet(3).map((row) => ({ ...row, Removed: '2025-03-01', Reason: 'zebra' }));
    const [cause] = rowsToCheck(inventoryFrom([...fleet(3, 400), ...rows]).toCheck).filter(
      ({ kind }) => kind === 'removal cause not understood',
    );
    expect(cause).toMatchObject({ cause: 'removal cause zebra', count: 3 });
  });
});
