import type { Chance } from './chance.ts';
import { chanceFrom } from './chance.ts';
import { dateDirt } from './dirtOfDates.ts';
import { labelDirt } from './dirtOfLabels.ts';
import { mayBeHidden, readingDirt } from './dirtOfReadings.ts';
import type { Dirt, Planted } from './dirtyRow.ts';
import { inService, removed, tested } from './dirtyRow.ts';
import type { Row } from './register.ts';

/** Throws every kind of dirt on the rows, at most one kind on a row. */
export function throwDirt(seed: number, rows: Row[]): readonly Planted[] {
  const chance = chanceFrom(seed);
  const planted = [setDirt, sharedPlaces, twoPlacesAtOnce, twins].map((plant) => plant(rows, chance));
  const cells = [...labelDirt, ...dateDirt, ...readingDirt].map((dirt) => spoilCells(rows, chance, dirt));
  return [...planted, ...cells, hide(rows, chance)];
}

function free(rows: readonly Row[], chance: Chance, fits: (row: Row) => boolean): Row[] {
  const clean = rows.filter((row) => row.kind === 'battery' && row.spoiled === undefined && fits(row));
  return chance.shuffled(clean);
}

function spoilCells(rows: readonly Row[], chance: Chance, dirt: Dirt): Planted {
  const chosen = free(rows, chance, dirt.fits).slice(0, dirt.count);
  chosen.forEach((row, index) => {
    dirt.spoil(row, chance, index);
    row.spoiled = dirt.kind;
  });
  return { kind: dirt.kind, rows: chosen };
}

function mateOf(rows: readonly Row[], row: Row): Row | undefined {
  return rows.find(
    (other) => other !== row && inService(other) && other.stint!.vehicle === row.stint!.vehicle,
  );
}

const ofPair = (row: Row): boolean => inService(row) && row.stint!.vehicle.kind.places === 2;

// A flooded battery beside an AGM one: the row names a flooded type and its stock number.
function setDirt(rows: Row[], chance: Chance): Planted {
  const fits = (row: Row): boolean => ofPair(row) && row.battery!.kind === '6T AGM' && !tested(row);
  return spoilCells(rows, chance, {
    kind: 'set with mixed construction',
    count: 3,
    fits: (row) => fits(row) && mateOf(rows, row)?.spoiled === undefined,
    spoil: ({ cells }) =>
      Object.assign(cells, { type: '6T flooded', stockNumber: '6140-99-000-0217', maker: '9ZZ96' }),
  });
}

function sharedPlaces(rows: Row[], chance: Chance): Planted {
  return spoilCells(rows, chance, {
    kind: 'two batteries in one place',
    count: 3,
    fits: (row) => ofPair(row) && mateOf(rows, row) !== undefined,
    spoil: (row) => {
      row.cells.place = mateOf(rows, row)!.cells.place;
    },
  });
}

// The serial of a battery that is in service elsewhere, copied into this row.
function twoPlacesAtOnce(rows: Row[], chance: Chance): Planted {
  const [first, ...others] = free(
    rows,
    chance,
    (row) => inService(row) && !tested(row) && row.battery!.maker === '9ZZ98',
  );
  const sources = [first!, ...others.slice(0, 2)];
  for (const source of sources) source.spoiled = 'in two places at once';
  return spoilCells(rows, chance, {
    kind: 'in two places at once',
    count: sources.length,
    fits: (row) => others.includes(row) && !sources.some(({ site }) => site === row.site),
    spoil: ({ cells }, _, index) => {
      cells.serial = sources[index]!.cells.serial;
    },
  });
}

function twins(rows: Row[], chance: Chance): Planted {
  const chosen = free(rows, chance, removed).slice(0, 4);
  const copies = chosen.map((row) => ({ ...row, cells: { ...row.cells }, spoiled: 'the same life twice' }));
  chosen.forEach((row, index) => {
    row.spoiled = 'the same life twice';
    rows.splice(rows.indexOf(row) + 1, 0, copies[index]!);
  });
  return { kind: 'the same life twice', rows: copies };
}

function hide(rows: readonly Row[], chance: Chance): Planted {
  const chosen = free(rows, chance, mayBeHidden).slice(0, 7);
  for (const row of chosen) Object.assign(row, { hidden: true, spoiled: 'hidden rows counted' });
  return { kind: 'hidden rows counted', rows: chosen };
}
