import type { Outcome } from '../src/basics/outcome.ts';
import { andThen, answer } from '../src/basics/outcome.ts';
import { fahrenheitFromCelsius, temperatureUnit } from '../src/basics/units.ts';
import { cellSpread as coreCellSpread } from '../src/electrochemistry/cellSpread.ts';
import { chargeBand as coreChargeBand } from '../src/electrochemistry/chargeBand.ts';
import { constructionFrom } from '../src/electrochemistry/constructions.ts';
import { freezingPoint as coreFreezingPoint } from '../src/electrochemistry/freezingPoint.ts';
import { gravityCharge as coreGravityCharge } from '../src/electrochemistry/gravityCharge.ts';
import { restVoltage as coreRestVoltage } from '../src/electrochemistry/restVoltage.ts';
import { stateOfCharge as coreStateOfCharge } from '../src/electrochemistry/stateOfCharge.ts';
import type { Construction } from '../src/service/battery.ts';
import type { Cell } from './cell.ts';
import { celsiusFrom, eachBlockRow, eachCell, eachRow, isBlankOrZero, numberFrom } from './cell.ts';

/**
 * State of charge, 0 to 1, from rested open-circuit voltage and battery temperature.
 * @customfunction STATEOFCHARGE
 * @param {any[][]} volts Voltage of one 12 V battery after 3 h at rest or more, nothing connected [V], 6 to 16; cell or column
 * @param {any[][]} [temperature] Battery temperature, -40 to 60 C; empty means 25 C; cell or column
 * @param {any[][]} [construction] "AGM" (default), "flooded", "gel" (AGM acids until a source is found), or this battery's own full rest voltage at 25 C, 12.0 to 13.5; cell or column
 * @param {any} [unit] Unit of the temperature, "C" (default) or "F"
 * @returns {any[][]} State of charge, 0 to 1, in the shape of the volts
 * @uncertainty One sigma is about 7 points of a hundred (own judgement): acid fill 3, rest 3.5, shape of the curve 4.5, a meter good to 10 mV 1, a temperature 5 K off 0.7. Below 0 C the change with temperature is extrapolated, to about 10 mV at -30 C. CHARGEBAND gives the band.
 * @notfor A battery on charge or on float, one just driven or cranked, one that is partly frozen, other chemistries. Take no own full voltage under 12.5 V: a sound battery that is really full rests higher, and near 12.0 V the whole scale shrinks to 0.15 V.
 * @example =CRANK.STATEOFCHARGE(12.615, 25, "AGM")
 */
export function stateOfCharge(
  volts: any[][],
  temperature?: any[][],
  construction?: any[][],
  unit?: any,
): any[][] {
  const inputs = { columns: [volts, temperature, construction], singles: [unit], blank: isBlankOrZero };
  return eachCell(inputs, (cells) => atRest('volts', cells, unit, coreStateOfCharge));
}

/**
 * State of charge with a nine-in-ten band, one row of low, best and high, 0 to 1, for each rested open-circuit voltage.
 * @customfunction CHARGEBAND
 * @param {any[][]} volts Voltage of one 12 V battery after 3 h at rest or more, nothing connected [V], 6 to 16; cell or column
 * @param {any[][]} [temperature] Battery temperature, -40 to 60 C; empty means 25 C; cell or column
 * @param {any[][]} [construction] "AGM" (default), "flooded", "gel" (AGM acids until a source is found), or this battery's own full rest voltage at 25 C, 12.0 to 13.5; cell or column
 * @param {any} [unit] Unit of the temperature, "C" (default) or "F"
 * @returns {any[][]} Three columns low, best, high, 0 to 1, without a header, one row for each reading
 * @uncertainty The half width is 1.645 x 0.066 for every battery (own judgement), held to 0 to 1. It doesn't grow with a flooded battery's steeper scale, nor with an own full voltage under 12.5 V, where it is too narrow.
 * @notfor A battery on charge or on float, one just driven or cranked, one that is partly frozen, other chemistries.
 * @example =CRANK.CHARGEBAND(12.615, 25, "AGM")
 */
export function chargeBand(
  volts: any[][],
  temperature?: any[][],
  construction?: any[][],
  unit?: any,
): any[][] {
  const inputs = { columns: [volts, temperature, construction], singles: [unit], blank: isBlankOrZero };
  return eachRow(inputs, 3, (cells) =>
    andThen(atRest('volts', cells, unit, coreChargeBand), ({ low, best, high }) => answer([low, best, high])),
  );
}

/**
 * State of charge, 0 to 1, of a flooded battery from a hydrometer reading and the temperature of its acid.
 * @customfunction GRAVITYCHARGE
 * @param {any[][]} gravity Specific gravity as the hydrometer shows it, 1.000 to 1.400, written like 1.265; cell or column
 * @param {any[][]} [temperature] Temperature of the acid, -40 to 60 C, for the correction to 80 F (26.7 C); empty means 25 C; cell or column
 * @param {any} [unit] Unit of the temperature, "C" (default) or "F"
 * @returns {any[][]} State of charge, 0 to 1; from 1.265 to 1.300 (corrected) it is 1
 * @uncertainty About 0.005 of reading and 0.005 of acid fill, together 5 points of a hundred. The correction of 0.004 per 5.6 K is right for charged acid and about 0.0007 too large for discharged acid.
 * @notfor Sealed batteries, acid just topped up with water or just charged (not yet mixed), batteries filled for another climate: one filled with 1.280 acid reads 9 to 13 points high.
 * @example =CRANK.GRAVITYCHARGE(1.19, 80, "F")
 */
export function gravityCharge(gravity: any[][], temperature?: any[][], unit?: any): any[][] {
  const inputs = { columns: [gravity, temperature], singles: [unit], blank: isBlankOrZero };
  return eachCell(inputs, (cells) => atRest('gravity', cells, unit, coreGravityCharge));
}

/**
 * Largest difference in specific gravity between the cells of each row; fully charged, TM 9-6140-200-14 calls more than 0.025 unserviceable, TM 5-3805-281-24-2 more than 0.050.
 * @customfunction CELLSPREAD
 * @param {any[][]} gravities Hydrometer readings of one battery's two to six cells side by side, each 1.000 to 1.400; one row for each battery; empty cells are left out
 * @returns {any[][]} Difference in specific gravity, one answer for each row
 * @uncertainty About 0.003 with a good hydrometer. The limits of 0.025 (paragraph 4-7) and 0.050 (hydrometer test, after a charge) are the manuals' and hold for a fully charged battery.
 * @notfor Cells read at different temperatures, acid just topped up and not yet mixed by a charge, sealed batteries.
 * @example =CRANK.CELLSPREAD({1.265,1.26,1.255,1.265,1.24,1.26})
 */
export function cellSpread(gravities: any[][]): any[][] {
  return eachBlockRow(gravities, (cells) => {
    const readings: number[] = [];
    for (const cell of cells) {
      if (isBlankOrZero(cell)) continue;
      const reading = numberFrom(cell, 'gravity');
      if (!reading.ok) return reading;
      readings.push(reading.value);
    }
    return readings.length === 0 ? answer<Cell>('') : coreCellSpread(readings);
  });
}

/**
 * Rest voltage of a 12 V battery [V] from its state of charge and temperature.
 * @customfunction RESTVOLTAGE
 * @param {any[][]} charge State of charge, 0 to 1; cell or column
 * @param {any[][]} [temperature] Battery temperature, -40 to 60 C; empty means 25 C; cell or column
 * @param {any[][]} [construction] "AGM" (default), "flooded", "gel" (AGM acids until a source is found), or this battery's own full rest voltage at 25 C, 12.0 to 13.5; cell or column
 * @param {any} [unit] Unit of the temperature, "C" (default) or "F"
 * @returns {any[][]} Rest voltage [V]
 * @uncertainty About 0.03 V for the acid fill and 0.02 V for the curve between batteries of one construction; the physics itself is good to 0.004 V up to 6 mol/kg of acid, 0.02 V above (AGM near full).
 * @notfor A charging or float voltage, a voltage under load, a battery with a dead cell.
 * @example =CRANK.RESTVOLTAGE(0.8, 25, "AGM")
 */
export function restVoltage(
  charge: any[][],
  temperature?: any[][],
  construction?: any[][],
  unit?: any,
): any[][] {
  const inputs = { columns: [charge, temperature, construction], singles: [unit] };
  return eachCell(inputs, (cells) => atRest('charge', cells, unit, coreRestVoltage));
}

/**
 * Temperature at which the electrolyte begins to freeze [C, or F with the unit "F"], from the rest voltage of a 12 V battery of any construction.
 * @customfunction FREEZINGPOINT
 * @param {any[][]} volts Voltage of one 12 V battery after 3 h at rest or more, nothing connected [V], 6 to 16; cell or column
 * @param {any[][]} [temperature] Battery temperature when the voltage was read, -40 to 60 C; empty means 25 C; cell or column
 * @param {any} [unit] Unit of the temperature and of the answer, "C" (default) or "F"
 * @returns {any[][]} Temperature at which ice begins to form; the table ends at -67.8 C
 * @uncertainty The table agrees within 3.5 K with a calculation of ice in acid; a meter 10 mV off is 0.1 to 1.2 K. Keep 5 K clear of it.
 * @notfor A battery not rested (it reads too high and looks safer than it is), one just topped up with water, cells of unlike acid: the weakest freezes first.
 * @example =CRANK.FREEZINGPOINT(12)
 */
export function freezingPoint(volts: any[][], temperature?: any[][], unit?: any): any[][] {
  const inputs = { columns: [volts, temperature], singles: [unit], blank: isBlankOrZero };
  return eachCell(inputs, (cells) =>
    andThen(atRest('volts', cells, unit, coreFreezingPoint), (celsius) => inUnit(celsius, unit)),
  );
}

// Cells are reading, temperature, and construction where the function has one.
function atRest<T>(
  argument: string,
  cells: readonly unknown[],
  unit: unknown,
  compute: (reading: number, celsius: number | undefined, construction: Construction) => Outcome<T>,
): Outcome<T> {
  const [reading, temperature, construction] = cells;
  return andThen(numberFrom(reading, argument), (value) =>
    andThen(celsiusFrom(temperature, unit), (celsius) =>
      andThen(constructionFrom(construction), (kind) => compute(value, celsius, kind)),
    ),
  );
}

function inUnit(celsius: number, unit: unknown): Outcome<Cell> {
  return andThen(temperatureUnit(unit), (scale) =>
    answer<Cell>(scale === 'F' ? fahrenheitFromCelsius(celsius) : celsius),
  );
}
