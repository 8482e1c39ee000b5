import type { Facts, Problem } from './outcome.ts';

/** How a reader sees what was given: text in quotes, a number as it is. */
export function shown(given: unknown): string {
  if (typeof given === 'string') return `"${given.length > 40 ? `${given.slice(0, 39)}…` : given}"`;
  if (typeof given === 'number') return String(Number(given.toPrecision(10)));
  if (typeof given === 'boolean') return given ? 'TRUE' : 'FALSE';
  return given === null || given === undefined ? 'nothing' : String(given);
}

const range = (facts: Facts): string =>
  facts.limits === undefined ? '' : `${facts.limits[0]} to ${facts.limits[1]}`;

const volts = (facts: Facts): string => `${Number(facts.given).toFixed(2)} V`;

/**
 * Every sentence about a problem stands here: what is wrong, what was given, what is allowed.
 * A new one goes under its room; its key is the `because` of the problem.
 */
const sentences = {
  // basics
  missing: (p) => `${p.argument} is missing`,
  notANumber: (p) => `${p.argument} must be a number; given ${shown(p.given)}`,
  outOfLimits: (p) => `${p.argument} is ${shown(p.given)}; allowed is ${range(p)}`,
  notAWord: (p) => `${p.argument} is ${shown(p.given)}; allowed are ${p.more?.allowed ?? ''}`,
  notADate: (p) =>
    `${p.argument} is ${shown(p.given)}; a date is a spreadsheet date or text such as 2026-03-15, years 1970 to 2100`,
  ambiguousDate: (p) =>
    `${p.argument} is ${shown(p.given)}, which reads two ways (day first or month first); write it as 2026-03-15`,
  shapesDiffer: (p) =>
    `the ranges must have one shape; given ${p.more?.first ?? ''} and ${p.more?.second ?? ''} (rows x columns)`,
  notOneColumn: (p) => `${p.argument} must be one column; given ${p.more?.columns ?? ''} columns`,
  noConvergence: (p) => `no stable answer was found for ${p.argument}`,
  // electrochemistry
  temperatureLimits: (p) =>
    `temperature is ${shown(p.given)} C; allowed is ${range(p)} C; for degrees Fahrenheit give the unit "F"`,
  wholeSet: (p) =>
    `${volts(p)} is the voltage of a whole 24 V set: measure each battery by itself (6 to 16 V)`,
  notRested: (p) =>
    `${volts(p)} is a battery on charge, on float or not rested: disconnect it, rest 3 h at least, 8 h better, and read again`,
  deadCell: (p) =>
    `${volts(p)} is under 11.3 V: deeply discharged or a dead cell; charge it alone, rest it 8 h and read again`,
  asGoodAsWater: (p) => `${volts(p)} is under 11.3 V: its acid is as good as water: keep it above 0 C`,
} satisfies Record<string, (facts: Facts) => string>;

/** The keys of the catalogue of sentences. */
export type ProblemCode = keyof typeof sentences;

/** The sentence that tells a person what is wrong, what was given and what is allowed. */
export function problemText(problem: Problem): string {
  return sentences[problem.because](problem);
}
