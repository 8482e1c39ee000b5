import { celsiusFromFahrenheit } from '../basics/units.ts';
import { cellText } from './cells.ts';
import { headOf } from './lines.ts';
import type { ReadContext } from './lines.ts';
import type { NumberReading } from './readNumber.ts';

/** Over this no battery is tested [C]; a station where many are reads degrees Fahrenheit. */
const HOTTER_THAN_TESTED = 45;
/** Hotter than any reading in either unit: a slip, and no sign of a unit. */
const HOTTER_THAN_ANY = 140;
const MANY = 0.2;
const LEAST_HOT = 3;

const FAHRENHEIT_HEAD = /(\bdeg(rees)?\s*f\b|°\s*f\b|\(f\)|\bf$|fahrenheit)/i;
const CELSIUS_HEAD = /(\bdeg(rees)?\s*c\b|°\s*c\b|\(c\)|\bc$|celsius)/i;

/** The unit of temperature that a head names. */
export function unitOfHead(head = ''): 'C' | 'F' | undefined {
  if (FAHRENHEIT_HEAD.test(head)) return 'F';
  return CELSIUS_HEAD.test(head) ? 'C' : undefined;
}

type Readings = readonly (NumberReading | undefined)[];

/**
 * How the temperatures of a column become degrees Celsius: by the unit in the cell, else that of the settings, else that
 * of the header. A site more than a fifth of whose readings are hotter than a battery is ever tested reads degrees
 * Fahrenheit, whatever the header says.
 * @returns the temperature of a line's reading [C]
 */
export function temperatureScale(
  context: ReadContext,
  readings: Readings,
): (reading: NumberReading, line: number) => number {
  const isFahrenheit = fahrenheitLines(context, readings);
  return ({ value, celsius, fahrenheit }, line) =>
    isFahrenheit(line) && celsius !== true && fahrenheit !== true ? celsiusFromFahrenheit(value!) : value!;
}

function fahrenheitLines(context: ReadContext, readings: Readings): (line: number) => boolean {
  const { temperatureUnit } = context;
  const head = headOf(context, 'temperature');
  if (temperatureUnit !== undefined || FAHRENHEIT_HEAD.test(head))
    return () => (temperatureUnit ?? 'F') === 'F';
  const sites = bySite(context, readings);
  const hot = [...sites].filter(([, lines]) => isHot(lines, readings));
  if (hot.length === 0) return () => false;
  if (hot.length === sites.size)
    report(
      context,
      head,
      'the whole column',
      hot.flatMap(([, lines]) => lines),
      readings,
    );
  else
    for (const [site, lines] of hot)
      report(context, head, site === '' ? 'rows without a site' : site, lines, readings);
  const converted = new Set(hot.flatMap(([, lines]) => lines));
  return (line) => converted.has(line);
}

// The lines of each site whose reading doesn't itself name its unit.
function bySite({ at, block, kept }: ReadContext, readings: Readings): ReadonlyMap<string, number[]> {
  const column = at.get('site');
  const sites = new Map<string, number[]>();
  readings.forEach((reading, line) => {
    if (reading?.value === undefined || reading.celsius === true || reading.fahrenheit === true) return;
    const site = column === undefined ? '' : cellText(block.rows[kept[line]!]![column]);
    const lines = sites.get(site);
    if (lines === undefined) sites.set(site, [line]);
    else lines.push(line);
  });
  return sites;
}

const valueOf = (readings: Readings, line: number): number => readings[line]!.value!;

function isHot(lines: readonly number[], readings: Readings): boolean {
  const hot = lines.filter((line) => isHotReading(valueOf(readings, line)));
  return hot.length >= LEAST_HOT && hot.length >= MANY * lines.length;
}

const isHotReading = (value: number): boolean => value > HOTTER_THAN_TESTED && value < HOTTER_THAN_ANY;

function report(
  context: ReadContext,
  column: string,
  who: string,
  lines: readonly number[],
  readings: Readings,
): void {
  const row = (line: number): number => context.block.rowNumber(context.kept[line]!);
  const hot = lines.map((line) => valueOf(readings, line)).filter(isHotReading);
  const claim = CELSIUS_HEAD.test(column) ? ', though the header says Celsius' : '';
  for (const line of lines) context.findings.repairedRows.add(row(line));
  context.findings.add(row(lines[0]!), {
    kind: 'temperature must be Fahrenheit',
    column,
    count: lines.length,
    group: `temperature: ${who}`,
    given: `${who}: ${hot.length} of ${lines.length} over ${HOTTER_THAN_TESTED}, such as ${hot.slice(0, 3).join(', ')}`,
    done: `taken as degrees Fahrenheit${claim}, unless you say otherwise`,
    setting: 'temperatureUnit',
  });
}
