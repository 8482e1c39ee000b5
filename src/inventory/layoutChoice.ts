import type { Day } from '../basics/calendar.ts';
import { addMonths, dayParts } from '../basics/calendar.ts';
import { DAYS_AHEAD } from '../label/codeDay.ts';
import type { Layout } from '../label/layout.ts';
import { compileLayout, DEFAULT_LAYOUT } from '../label/layout.ts';
import { readCode } from '../label/readCode.ts';

/** Layouts that are tried, the usual ones first: of two that read equally many codes the earlier is taken. */
const LAYOUTS_TRIED: readonly string[] = [
  DEFAULT_LAYOUT,
  ...[
    'yyMM-lot',
    'kkWW-lot',
    'yyooo-lot',
    'yyyyMMdd-lot',
    'yyyyMM-lot',
    'MMyyyy-lot',
    'yyMMdd-lot',
    'ddMMyy-lot',
  ],
  ...['Ay-lot', 'a12y-lot', 'Ayy-lot', 'a12yy-lot', 'yA-lot', 'ya12-lot', 'yyA-lot', 'yya12-lot'],
];

/** Codes are believed to a date from so many years before as-of (own judgement). */
const YEARS_BELIEVED = 12;

/** Two layouts that read this share of a maker's codes each are a question for the user. */
const READS_NEARLY_ALL = 0.95;

/** The layout of one maker's codes, and what speaks against it. */
export type LayoutChoice = {
  readonly layout: Layout;
  /** Codes that it reads to a believable date, of all that the maker has. */
  readonly read: number;
  readonly all: number;
  /** Rows with a code of the maker. */
  readonly count: number;
  /** Another layout that reads nearly all of them too, and to other dates. */
  readonly rival?: Layout;
  /** True where the settings name the layout. */
  readonly named: boolean;
};

/** A maker's codes: each distinct cell with how often it stands in the sheet. */
export type MakerCodes = ReadonlyMap<string | number, number>;

const DISTINCT_LOOKED_AT = 500;
/** With fewer distinct codes a maker's layout is hardly shown by them; from so many on real weeks go over twelve. */
const FEW_CODES = 10;

type Tried = { readonly layout: Layout; readonly days: readonly (Day | undefined)[]; readonly read: number };

/**
 * The layout of each maker's codes: what the settings name, else the layout that reads most of them to dates from
 * 12 years before to 31 days after as-of. Where a maker has few codes and several layouts read them alike, the one that
 * the other makers of the sheet use.
 * @param codes  each maker's codes ("" = rows without a maker)
 * @param named  what the settings say: maker, or * for all others, to layout
 * @param asOf  day of the question
 */
export function layoutChoices(
  codes: ReadonlyMap<string, MakerCodes>,
  named: Readonly<Record<string, string>>,
  asOf: Day,
): ReadonlyMap<string, LayoutChoice> {
  const tried = new Map([...codes].map(([maker, ofMaker]) => [maker, tryAll(ofMaker, asOf)]));
  const inSheet = sheetReads(tried);
  return new Map(
    [...codes].map(([maker, ofMaker]) => {
      const counts = [...ofMaker.values()];
      const [count, all] = [sum(counts), sum(counts.slice(0, DISTINCT_LOOKED_AT))];
      const layout = layoutNamed(named, maker);
      if (layout !== undefined) return [maker, { layout, read: all, all, count, named: true }];
      return [maker, { ...chosen(tried.get(maker)!, all, inSheet), count }];
    }),
  );
}

const sum = (counts: readonly number[]): number => counts.reduce((total, count) => total + count, 0);

function layoutNamed(named: Readonly<Record<string, string>>, maker: string): Layout | undefined {
  const text = Object.hasOwn(named, maker) ? named[maker] : named['*'];
  const layout = text === undefined ? undefined : compileLayout(text);
  return layout?.ok === true ? layout.value : undefined;
}

function tryAll(codes: MakerCodes, asOf: Day): readonly Tried[] {
  const looked = [...codes].slice(0, DISTINCT_LOOKED_AT);
  const [earliest, latest] = [addMonths(asOf, -12 * YEARS_BELIEVED), asOf + DAYS_AHEAD];
  return LAYOUTS_TRIED.flatMap((text) => {
    const layout = compileLayout(text);
    if (!layout.ok) return [];
    const days = looked.map(([code]) => {
      const reading = readCode(code, layout.value, asOf);
      if (!reading.ok) return undefined;
      return reading.value.day >= earliest && reading.value.day <= latest ? reading.value.day : undefined;
    });
    const read = sum(looked.map(([, count], index) => (days[index] === undefined ? 0 : count)));
    return [{ layout: layout.value, days, read }];
  });
}

// What the makers with many codes write: it decides for one with few codes that fit several layouts alike.
function sheetReads(tried: ReadonlyMap<string, readonly Tried[]>): ReadonlyMap<string, number> {
  const reads = new Map<string, number>();
  for (const layouts of tried.values()) {
    const { layout, read, days } = mostRead(layouts);
    if (days.length >= FEW_CODES) reads.set(layout.text, (reads.get(layout.text) ?? 0) + read);
  }
  return reads;
}

const mostRead = (tried: readonly Tried[]): Tried =>
  tried.reduce((best, one) => (one.read > best.read ? one : best));

function chosen(
  tried: readonly Tried[],
  all: number,
  inSheet: ReadonlyMap<string, number>,
): Omit<LayoutChoice, 'count'> {
  const usual = ({ layout }: Tried): number => inSheet.get(layout.text) ?? 0;
  const first = mostRead(tried);
  const alike = first.days.length >= FEW_CODES ? [first] : tried.filter(({ read }) => read === first.read);
  const best = alike.reduce((most, one) => (usual(one) > usual(most) ? one : most));
  const rival = tried.find((other) => other !== best && isRival(other, best, all));
  return {
    layout: best.layout,
    read: best.read,
    all,
    named: false,
    ...(rival === undefined ? {} : { rival: rival.layout }),
  };
}

function isRival(other: Tried, best: Tried, all: number): boolean {
  const enough = READS_NEARLY_ALL * all;
  if (other.read < enough || best.read < enough || showsNoWeeks(other)) return false;
  return other.days.some((day, index) => day !== undefined && day !== best.days[index]);
}

// Months read as weeks: over many codes real weeks go beyond the twelfth.
function showsNoWeeks({ layout, days }: Tried): boolean {
  if (layout.calendar !== 'week' || days.length < FEW_CODES) return false;
  return days.every((day) => day === undefined || isEarlyInYear(day));
}

// The Mondays of weeks 1 to 13.
function isEarlyInYear(monday: Day): boolean {
  const { month, day } = dayParts(monday);
  return month <= 3 || (month === 12 && day >= 29);
}
