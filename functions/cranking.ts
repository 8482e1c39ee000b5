import type { Outcome } from '../src/basics/outcome.ts';
import { andThen, answer, problem } from '../src/basics/outcome.ts';
import type { BatteryTest } from '../src/cranking/batteryTest.ts';
import { damageFrom, retestFrom } from '../src/cranking/batteryTest.ts';
import { convertRating as coreConvertRating, ratingPair } from '../src/cranking/convertRating.ts';
import { crankingAmps as coreCrankingAmps } from '../src/cranking/crankingAmps.ts';
import { loadTestFloor as coreLoadTestFloor } from '../src/cranking/loadTestFloor.ts';
import { specifiedAmps as coreSpecifiedAmps } from '../src/cranking/specifiedAmps.ts';
import { verdict as coreVerdict } from '../src/cranking/verdict.ts';
import { verdictReason as coreVerdictReason } from '../src/cranking/verdictReason.ts';
import { constructionFrom } from '../src/electrochemistry/constructions.ts';
import type { Cell } from './cell.ts';
import {
  asBlock,
  celsiusFrom,
  eachCell,
  eachRow,
  errorCell,
  isBlank,
  isBlankOrZero,
  isCellError,
  numberFrom,
} from './cell.ts';

/**
 * Cranking current in amperes that a fully charged battery of a rating has left at a temperature: a guide, never a verdict.
 * @customfunction CRANKINGAMPS
 * @param {any[][]} rating Cold-cranking rating on the label, amperes, 50 to 5000; cell or column
 * @param {any[][]} temperature Battery temperature, -29 to 27 C; cell or column
 * @param {any} [unit] "C" (default) or "F" for the temperature
 * @returns {any[][]} Amperes, one for each rating
 * @uncertainty About 10 % between -18 and 0 C, 20 % elsewhere: three of its four points are one page or from memory.
 * @notfor Judging a battery; a battery that is not fully charged.
 * @example =CRANK.CRANKINGAMPS(1100, -18)
 */
export function crankingAmps(rating: any[][], temperature: any[][], unit?: any): any[][] {
  const inputs = { columns: [rating, temperature], singles: [unit], blank: isBlankOrZero };
  return eachCell(inputs, ([amps, degrees]) =>
    andThen(numberFrom(amps, 'rating'), (value) =>
      andThen(celsiusGiven(degrees, unit), (celsius) => coreCrankingAmps(value, celsius)),
    ),
  );
}

/**
 * Least voltage of a charged 12 V battery at the end of a 15 s load test at half its cold-cranking rating.
 * @customfunction LOADTESTFLOOR
 * @param {any[][]} temperature Battery temperature, -18 to 60 C; cell or column
 * @param {any} [unit] "C" (default) or "F" for the temperature
 * @returns {any[][]} Volts, one for each temperature
 * @uncertainty As printed in four service texts; a fifth asks for 0.1 V more.
 * @notfor A battery under 75 % of its charge, or a load other than half the cold-cranking rating.
 * @example =CRANK.LOADTESTFLOOR(45, "F")
 */
export function loadTestFloor(temperature: any[][], unit?: any): any[][] {
  return eachCell({ columns: [temperature], singles: [unit] }, ([degrees]) =>
    andThen(celsiusGiven(degrees, unit), coreLoadTestFloor),
  );
}

/**
 * Cold-cranking amperes that are asked of a new battery of a standard type; multiply by your accepted share to judge a used one.
 * @customfunction SPECIFIEDAMPS
 * @param {any[][]} type Name of a standard type, such as "6T AGM"; case and blanks don't matter; cell or column
 * @returns {any[][]} Amperes, one for each type
 * @uncertainty Common practice, in agreement with a published load test; the specification's text was not seen.
 * @notfor A limit for batteries in use; a type of its own label: take the label.
 * @example =CRANK.SPECIFIEDAMPS("6T AGM")
 */
export function specifiedAmps(type: any[][]): any[][] {
  return eachCell({ columns: [type], blank: isBlankOrZero }, ([name]) => coreSpecifiedAmps(String(name)));
}

/**
 * Verdict on a battery: Serviceable, Awaiting charge, Condemned or Not judged.
 * @customfunction VERDICT
 * @param {any[][]} reading Cranking reading: amperes as the tester shows them, or volts (under 16) at the end of a load test; cell or column
 * @param {any[][]} least The least reading that you accept for this use, in the same unit; cell or column
 * @param {any[][]} [volts] Rest voltage, disconnected, 3 h at rest or more, 6 to 16 V; cell or column
 * @param {any[][]} [temperature] Battery temperature, -40 to 100 C; blank is neither cold nor warm; cell or column
 * @param {any[][]} [retest] FALSE or 0 first test (default), TRUE or 1 after a full charge that followed a failing test, 2 after a second; cell or column
 * @param {any[][]} [construction] "AGM" (default), "flooded", "gel", or its own full rest voltage at 25 C, 12.0 to 13.5; cell or column
 * @param {any} [unit] "C" (default) or "F" for the temperature
 * @param {any[][]} [damage] TRUE or words of damage: cracked, bulged, leaking, burnt, loose post; blank for none; cell or column
 * @returns {any[][]} One word or two, one for each battery
 * @uncertainty Charge from rest voltage is good to about 7 points of a hundred, so batteries near 75 % may go either way.
 * @notfor A battery read while connected to its set or on charge; a least taken from a converted rating.
 * @example =CRANK.VERDICT(420, 980, 11.7, -9)
 */
export function verdict(
  reading: any[][],
  least: any[][],
  volts?: any[][],
  temperature?: any[][],
  retest?: any[][],
  construction?: any[][],
  unit?: any,
  damage?: any[][],
): any[][] {
  const columns = [reading, least, volts, temperature, retest, construction, damage];
  return eachTest(columns, unit, coreVerdict);
}

/**
 * Reason for the verdict on a battery in one sentence, and the next step with its caution.
 * @customfunction VERDICTREASON
 * @param {any[][]} reading Cranking reading: amperes as the tester shows them, or volts (under 16) at the end of a load test; cell or column
 * @param {any[][]} least The least reading that you accept for this use, in the same unit; cell or column
 * @param {any[][]} [volts] Rest voltage, disconnected, 3 h at rest or more, 6 to 16 V; cell or column
 * @param {any[][]} [temperature] Battery temperature, -40 to 100 C; blank is neither cold nor warm; cell or column
 * @param {any[][]} [retest] FALSE or 0 first test (default), TRUE or 1 after a full charge that followed a failing test, 2 after a second; cell or column
 * @param {any[][]} [construction] "AGM" (default), "flooded", "gel", or its own full rest voltage at 25 C, 12.0 to 13.5; cell or column
 * @param {any} [unit] "C" (default) or "F" for the temperature
 * @param {any[][]} [damage] TRUE or words of damage: cracked, bulged, leaking, burnt, loose post; blank for none; cell or column
 * @returns {any[][]} Text, one for each battery
 * @uncertainty As the verdict.
 * @notfor Replacing local rules or licensed practice, which decide.
 * @example =CRANK.VERDICTREASON(1150, 980, 12.8, -25)
 */
export function verdictReason(
  reading: any[][],
  least: any[][],
  volts?: any[][],
  temperature?: any[][],
  retest?: any[][],
  construction?: any[][],
  unit?: any,
  damage?: any[][],
): any[][] {
  const columns = [reading, least, volts, temperature, retest, construction, damage];
  return eachTest(columns, unit, coreVerdictReason);
}

/**
 * Low and high amperes between which a cranking rating lies in another standard, a table with its header row.
 * @customfunction CONVERTRATING
 * @param {any[][]} value Rating on the label, amperes, 50 to 5000; cell or column
 * @param {any} from Standard of the rating: "SAE", "DIN", "EN", "IEC" or "CA"
 * @param {any} to Standard asked for; pairs SAE-DIN, SAE-EN, DIN-IEC, SAE-CA, both ways
 * @returns {any[][]} Header low, high and a row for each rating
 * @uncertainty Published rules differ by 6 to 15 %, so a range; only the SAE-DIN rules were seen in print.
 * @notfor A verdict; a JIS rank, which is no number of amperes.
 * @example =CRANK.CONVERTRATING(400, "DIN", "SAE")
 */
export function convertRating(value: any[][], from: any, to: any): any[][] {
  const standards = ratingNames(from, to);
  const inputs = { columns: [value], singles: [from, to], blank: isBlankOrZero };
  const rows = eachRow(inputs, 2, ([amps]) => convertedRow(amps, standards));
  // What is the whole answer must stand in the formula's own cell, where the header would hide it.
  const only = rows.length === 1 ? rows[0]![0]! : undefined;
  if (only === '' || isCellError(only)) return [[only]];
  return standards.ok ? [['low', 'high'], ...rows] : [[errorCell(standards)]];
}

type RatingNames = { readonly from: string; readonly to: string };

function ratingNames(from: unknown, to: unknown): Outcome<RatingNames> {
  return andThen(wordFrom(from, 'from'), (first) =>
    andThen(wordFrom(to, 'to'), (second) =>
      andThen(ratingPair(first, second), () => answer({ from: first, to: second })),
    ),
  );
}

function convertedRow(amps: unknown, standards: Outcome<RatingNames>): Outcome<readonly Cell[]> {
  return andThen(standards, ({ from, to }) =>
    andThen(numberFrom(amps, 'value'), (value) =>
      andThen(coreConvertRating(value, from, to), ({ low, high }) => answer([low, high])),
    ),
  );
}

function wordFrom(given: unknown, argument: string): Outcome<string> {
  const word = single(given);
  return isBlank(word) ? problem('missing', 'missing', argument) : answer(String(word));
}

const single = (given: unknown): unknown => asBlock(given)[0]?.[0];

function celsiusGiven(degrees: unknown, unit: unknown): Outcome<number> {
  return andThen(celsiusFrom(degrees, single(unit)), (celsius) =>
    celsius === undefined ? problem('missing', 'missing', 'temperature') : answer(celsius),
  );
}

// A test is empty only where reading, volts and damage are; the first column alone doesn't say.
function eachTest(
  columns: readonly unknown[],
  unit: unknown,
  compute: (test: BatteryTest) => Outcome<Cell>,
): Cell[][] {
  return eachCell({ columns, singles: [unit], blank: () => false }, (cells) => {
    if (isUntested(cells)) return answer('');
    return andThen(testFrom(cells, single(unit)), compute);
  });
}

const isUntested = ([reading, , volts, , , , damage]: readonly unknown[]): boolean =>
  isBlank(reading) && isBlankOrZero(volts) && !damageFrom(damage);

// A reading of 0 is one; least and volts of 0 are empty cells.
function testFrom(cells: readonly unknown[], unit: unknown): Outcome<BatteryTest> {
  const [reading, least, volts, temperature, retest, construction, damage] = cells;
  return withValue(isBlank(reading), reading, 'reading', (readingGiven) =>
    withValue(isBlankOrZero(least), least, 'least', (leastGiven) =>
      withValue(isBlankOrZero(volts), volts, 'volts', (voltsGiven) =>
        andThen(celsiusFrom(temperature, unit), (celsius) =>
          andThen(retestFrom(retest), (which) =>
            andThen(constructionFrom(construction), (made) =>
              answer({
                ...{ reading: readingGiven, least: leastGiven, volts: voltsGiven, celsius },
                ...{ retest: which, construction: made, damage: damageFrom(damage) },
              }),
            ),
          ),
        ),
      ),
    ),
  );
}

function withValue<T>(
  empty: boolean,
  value: unknown,
  argument: string,
  next: (value: number | undefined) => Outcome<T>,
): Outcome<T> {
  return empty ? next(undefined) : andThen(numberFrom(value, argument), next);
}
