import { dayFromParts, dayParts, momentOfDay } from '../../src/basics/calendar.ts';
import type { Day } from '../../src/basics/calendar.ts';
import type { Chance } from './chance.ts';
import { BAD_LOT } from './service.ts';

/** Month letters of the list that leaves out the I, January first. */
const MONTH_LETTERS = 'ABCDEFGHJKLM';

/** What a battery's label says. */
export type Label = { readonly code: string; readonly lot: string; readonly serial: string };

const two = (number: number): string => String(number).padStart(2, '0');

// How each maker writes its code; the layouts are in the words of the project's own layout language.
const CODE_LAYOUTS: Record<string, { readonly layout: string; readonly write: (made: Day) => string }> = {
  '9ZZ98': { layout: 'MMyy-lot', write: (made) => monthYear(made) },
  '9ZZ97': { layout: 'yyMM-lot', write: (made) => yearMonth(made) },
  '9ZZ96': { layout: 'MMyy-lot', write: (made) => monthYear(made) },
  '9ZZ95': { layout: 'Ay-lot', write: (made) => letterYear(made) },
  '9ZZ94': { layout: 'kkWW-lot', write: (made) => momentOfDay(made).toFormat('kkWW') },
  '7ZZ91': { layout: 'Ay-lot', write: (made) => letterYear(made) },
};

/** The layout of each maker's code, for the reader of the demonstration. */
export const codeLayouts: readonly (readonly [string, string])[] = Object.entries(CODE_LAYOUTS).map(
  ([maker, { layout }]) => [maker, layout],
);

const parts = (made: Day): { readonly year: string; readonly month: number } => {
  const { year, month } = dayParts(made);
  return { year: two(year % 100), month };
};
const monthYear = (made: Day): string => `${two(parts(made).month)}${parts(made).year}`;
const yearMonth = (made: Day): string => `${parts(made).year}${two(parts(made).month)}`;
const letterYear = (made: Day): string =>
  `${MONTH_LETTERS[parts(made).month - 1]}${parts(made).year.slice(1)}`;

/** The made date that a maker's batteries can have: the small maker made none from December to February. */
export function madeBy(maker: string, made: Day): Day {
  const { year, month } = dayParts(made);
  if (maker !== '7ZZ91' || (month > 2 && month < 12)) return made;
  return dayFromParts(month === 12 ? year : year - 1, 11, 12)!;
}

/** Code and lot of a battery made on that day; the bad lot has its own. */
export function codeAndLot(maker: string, made: Day, bad: boolean): Omit<Label, 'serial'> {
  const { year, month, day } = dayParts(made);
  const half = (year - 2015) * 24 + month * 2 + (day > 15 ? 1 : 0);
  const lot = bad ? BAD_LOT.lot : String(100 + ((half * 37 + maker.charCodeAt(4)) % 317));
  return { code: `${CODE_LAYOUTS[maker]!.write(made)}-${lot}`, lot };
}

const SERIAL_SHAPES: Record<string, (count: number) => string> = {
  '9ZZ98': (count) => String(count).padStart(7, '0'),
  '9ZZ97': (count) => `K${count}`,
  '9ZZ96': (count) => `F-${count}`,
  '9ZZ95': (count) => `LA${count}`,
  '9ZZ94': (count) => `G${count}`,
  '7ZZ91': (count) => `7-${count}`,
};

/** A giver of serials: each maker's run upwards with gaps, as deliveries do. */
export function serialGiver(chance: Chance): (maker: string) => string {
  const last = new Map<string, number>();
  return (maker) => {
    const next = (last.get(maker) ?? 20_000 + 1_000 * maker.charCodeAt(4)) + chance.whole(1, 9);
    last.set(maker, next);
    return SERIAL_SHAPES[maker]!(next);
  };
}
