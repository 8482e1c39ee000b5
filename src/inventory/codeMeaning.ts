import type { Day } from '../basics/calendar.ts';
import { dayParts, MONTH_NAMES } from '../basics/calendar.ts';
import type { Layout } from '../label/layout.ts';
import { compileLayout } from '../label/layout.ts';
import { readCode } from '../label/readCode.ts';

/** So many different codes are tried for one that shows a difference. */
const CODES_TRIED = 200;

type Codes = Iterable<string | number>;

/**
 * What a maker's codes would mean in each of several layouts: "A5-117 is January 2025". One code is shown for all of
 * them where one reads differently in each; else the first that each reads; none where a layout reads none.
 */
export function codeMeanings(codes: Codes, layouts: readonly string[], asOf: Day): readonly string[] {
  const tried = [...codes].slice(0, CODES_TRIED);
  const telling = tried.find((code) => {
    const all = layouts.map((layout) => meaningOf(code, layout, asOf));
    return !all.includes(undefined) && new Set(all).size === layouts.length;
  });
  return layouts.map((layout) => {
    const code = telling ?? tried.find((one) => meaningOf(one, layout, asOf) !== undefined);
    return code === undefined ? '' : `${code} is ${meaningOf(code, layout, asOf)}`;
  });
}

function meaningOf(code: string | number, text: string, asOf: Day): string | undefined {
  const layout = compileLayout(text);
  if (!layout.ok) return undefined;
  const reading = readCode(code, layout.value, asOf);
  return reading.ok ? spoken(reading.value.day, layout.value) : undefined;
}

function spoken(day: Day, { calendar, pieces }: Layout): string {
  const { year, month, day: ofMonth } = dayParts(day);
  const monthText = `${MONTH_NAMES[month - 1]!} ${year}`;
  if (calendar === 'week') return `the week from ${ofMonth} ${monthText}`;
  return calendar === 'ordinal' || pieces.includes('dd') ? `${ofMonth} ${monthText}` : monthText;
}
