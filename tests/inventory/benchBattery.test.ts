import { describe, expect, it } from 'vitest';
import { benchBattery } from '../../src/inventory/benchBattery.ts';
import { refusal, valueOf } from '../electrochemistry/outcomes.ts';
import { battery } from '../planning/inventedFleet.ts';

const SYMBOL = '[)>{RS}06{GS}17V9ZZ98{GS}1PBX6T-100{GS}SNF0012{RS}{EOT}';

const inventory = [
  battery(2, { serial: 'NF0012', maker: '9ZZ98' }),
  battery(3, { serial: 'NF0013', maker: '9ZZ98' }),
  battery(4, { serial: 'NF0013', maker: '9ZZ97', whereabouts: 'inStock' }),
  battery(5, { serial: 'NF0014' }),
  battery(6, { serial: 'NF0014' }),
];

describe('benchBattery', () => {
  it('knows a typed serial, whatever its case and the blanks around it', () => {
    const found = valueOf(benchBattery(' nf0012 ', inventory));
    expect(found).toMatchObject({ serial: 'NF0012', rows: [2], differences: [] });
    expect(found.battery?.row).toBe(2);
  });

  it('takes the serial out of a symbol', () => {
    const found = valueOf(benchBattery(SYMBOL, inventory));
    expect(found.battery?.row).toBe(2);
    expect(found.label?.maker).toBe('9ZZ98');
  });

  it('finds a serial in what a scanner puts around it, and tells what was taken off', () => {
    for (const framed of ['\u0002NF0012\u0003', 'nf0012\u001d', ']C1NF0012', ']d1NF0012']) {
      const found = valueOf(benchBattery(framed, inventory));
      expect([found.battery?.row, found.serial], framed).toEqual([2, 'NF0012']);
      expect(found.takenOff, framed).toMatch(/^(<STX> <ETX>|<GS>|\]C1|\]d1)$/);
    }
    expect(valueOf(benchBattery('NF0012', inventory)).takenOff).toBeUndefined();
    expect(valueOf(benchBattery('<STX>NF9999<ETX>', inventory))).toMatchObject({
      serial: 'NF9999',
      takenOff: '<STX> <ETX>',
    });
    expect(refusal(benchBattery(']C1NF9999', inventory))[1]).toContain("switch off the scanner's prefix");
  });

  it('tells what label and inventory say differently', () => {
    const other = [battery(2, { serial: 'NF0012', maker: '9ZZ97' })];
    expect(valueOf(benchBattery(SYMBOL, other)).differences).toEqual([
      'maker: the label says 9ZZ98, the inventory says 9ZZ97',
    ]);
  });

  it('of several with one serial takes the one in service, and none where two are', () => {
    expect(valueOf(benchBattery('NF0013', inventory)).battery?.row).toBe(3);
    const two = valueOf(benchBattery('NF0014', inventory));
    expect(two.battery).toBeUndefined();
    expect(two.rows).toEqual([5, 6]);
  });

  it('keeps a serial that the inventory does not have', () => {
    expect(valueOf(benchBattery('NF9999', inventory))).toEqual({
      serial: 'NF9999',
      rows: [],
      differences: [],
      label: expect.anything(),
    });
  });

  it('refuses nothing, and a symbol that names no battery', () => {
    expect(refusal(benchBattery('  ', inventory))[0]).toBe('missing');
    expect(refusal(benchBattery('0324-117', inventory))).toEqual([
      'missing',
      'the symbol "0324-117" names no serial; scan the other symbol of the label, or type the serial',
    ]);
  });
});
