import { describe, expect, it } from 'vitest';
import { countShelf } from '../../src/inventory/countShelf.ts';
import { whereText } from '../../src/inventory/whereText.ts';
import type { Battery } from '../../src/service/battery.ts';
import { refusal, valueOf } from '../electrochemistry/outcomes.ts';
import { battery } from '../planning/inventedFleet.ts';

const onShelf = (row: number, serial: string, more: Partial<Battery> = {}): Battery =>
  battery(row, {
    ...{ serial, site: 'North', storagePlace: 'B2', vehicle: '', set: '', whereabouts: 'inStock' },
    ...more,
  });

const stock = [
  onShelf(2, 'A1'),
  onShelf(3, 'A2'),
  onShelf(4, '0324-117'),
  onShelf(5, 'C1', { storagePlace: 'B3' }),
  onShelf(6, 'D1', { site: 'East' }),
  battery(7, { serial: 'E1', site: 'North', vehicle: 'NF-7', set: '', place: '2' }),
  battery(8, { serial: 'F1', site: 'North', vehicle: 'NF-8', set: '', whereabouts: 'removed' }),
  battery(9, { serial: '' }),
];
const SHELF = { site: 'North', storagePlace: 'B2' };
const count = (scans: readonly string[], shelf = SHELF) => valueOf(countShelf(scans, stock, shelf));
const serials = (batteries: readonly Battery[]): string[] => batteries.map(({ serial }) => serial);

describe('a count of a shelf', () => {
  it('finds what is there and misses what is not', () => {
    const { expected, scanned, found, missing } = count(['A1', '', ' 0324-117 ']);
    expect([expected, scanned, serials(found), serials(missing)]).toEqual([3, 2, ['A1', '0324-117'], ['A2']]);
  });

  it('passes over capital letters, blanks and the order', () => {
    expect(count(['a2 ', '0324-117', ' a1'], { site: 'NORTH', storagePlace: ' b2' }).missing).toEqual([]);
  });

  it('counts a serial in what a scanner puts around it, and tells what was taken off, once', () => {
    const { found, takenOff, unreadable } = count(['\u0002A1\u0003', '\u0002A2\u0003', ']C00324-117']);
    expect(serials(found)).toEqual(['A1', 'A2', '0324-117']);
    expect([takenOff, unreadable]).toEqual([['<STX> <ETX>', ']C0'], []]);
    expect(count(['A1']).takenOff).toEqual([]);
  });

  it('tells a battery of another shelf from one in a vehicle, a removed one and a stranger', () => {
    const { wrongPlace, elsewhere, unknown } = count(['C1', 'D1', 'E1', 'F1', 'Z9']);
    expect(wrongPlace.map(({ where }) => where)).toEqual(['in stock at North, B3', 'in stock at East, B2']);
    expect(elsewhere.map(({ where }) => where)).toEqual([
      'in NF-7 at North, place 2',
      'removed from NF-8 at North',
    ]);
    expect(unknown).toEqual(['Z9']);
  });

  it('counts what was scanned twice once', () => {
    const { twice, found, scanned } = count(['A1', 'a1', 'A1', 'Z9', 'z9']);
    expect(twice).toEqual([
      { serial: 'A1', times: 3 },
      { serial: 'Z9', times: 2 },
    ]);
    expect([serials(found), scanned]).toEqual([['A1'], 2]);
  });

  it('reads the text of a symbol, with its control characters spelled or not', () => {
    const spelled = '[)>{RS}06{GS}17V9ZZ98{GS}1PBX6T-100{GS}SA2{RS}{EOT}';
    const plain = '[)>\x1e06\x1d17V9ZZ98\x1d1PBX6T-100\x1dSA1\x1e\x04';
    expect(serials(count([spelled, plain]).found)).toEqual(['A1', 'A2']);
  });

  it('says of an unreadable scan why', () => {
    const { unreadable } = count(['6140-99-000-0123', '[)>{RS}06{GS}17V9ZZ98', 'a b?', 'A1']);
    expect(unreadable.map(({ scanned }) => scanned)).toHaveLength(3);
    expect(unreadable[0]!.why).toBe('read as stock number, which holds no serial');
    for (const { why } of unreadable) expect(why.length).toBeGreaterThan(20);
  });

  it('tells two batteries of one serial apart by maker, or by the number of scans', () => {
    const both = [onShelf(2, 'A1', { maker: '9ZZ98' }), onShelf(3, 'A1', { maker: '9ZZ97' })];
    const symbol = '[)>{RS}06{GS}17V9ZZ97{GS}1PBX6T-100{GS}SA1{RS}{EOT}';
    const counted = (scans: readonly string[]) => valueOf(countShelf(scans, both));
    expect(counted([symbol]).missing[0]!.maker).toBe('9ZZ98');
    expect(counted([symbol, symbol]).twice).toEqual([{ serial: 'A1', times: 2 }]);
    expect(counted(['A1', 'A1'])).toMatchObject({ missing: [], twice: [] });
  });

  it('without a shelf counts all that is in stock', () => {
    const { expected, missing, wrongPlace } = valueOf(countShelf(['C1', 'D1'], stock));
    expect([expected, serials(missing), wrongPlace]).toEqual([5, ['A1', 'A2', '0324-117'], []]);
  });

  it('every scan is told of once', () => {
    const scans = ['A1', 'A1', 'C1', 'E1', 'Z9', 'a b?', 'A2'];
    const { found, wrongPlace, elsewhere, unknown, twice, unreadable } = count(scans);
    const again = twice.reduce((sum, { times }) => sum + times - 1, 0);
    const told = [found, wrongPlace, elsewhere, unknown, unreadable].map(({ length }) => length);
    expect(told.reduce((sum, each) => sum + each, again)).toBe(scans.length);
  });
});

describe('a count of a shelf refuses', () => {
  it('nothing scanned', () => {
    expect(refusal(countShelf([' ', ''], stock))[0]).toBe('missing');
  });

  it('an inventory without stock', () => {
    expect(refusal(countShelf(['A1'], [battery(1)]))[0]).toBe('missing');
  });

  it('a shelf that the inventory does not know, and names those it does', () => {
    const [kind, text] = refusal(countShelf(['A1'], stock, { storagePlace: 'X' }));
    expect(kind).toBe('badInput');
    expect(text).toBe(
      'the inventory has no battery in stock at "X"; it has some at East, B2; North, B2; North, B3',
    );
  });
});

describe('where a battery is', () => {
  it.each([
    [{ vehicle: 'NF-1', site: 'North', set: 'A', place: '1' }, 'in NF-1 at North, set A, place 1'],
    [{ vehicle: '', site: 'North', set: '' }, 'in service at North'],
    [{ vehicle: '', site: '', set: '', whereabouts: 'removed' }, 'removed'],
    [{ vehicle: '', site: '', set: '', whereabouts: 'inStock' }, 'in stock'],
  ] as const)('%j is "%s"', (more, text) => {
    expect(whereText(battery(1, more))).toBe(text);
  });
});
