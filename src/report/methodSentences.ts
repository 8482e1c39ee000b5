import { isoDay } from '../basics/calendar.ts';
import type { OddGroup } from '../life/standsOut.ts';
import type { Banded } from '../planning/lifeFigures.ts';
import type { PastTrial } from '../planning/ownPast.ts';
import type { ReportFacts } from './reportFacts.ts';

const months = (value: number): string => (value > 999 ? 'more than 999' : value.toFixed(0));
const band = ({ best, low, high }: Banded): string =>
  `${months(best)} months (${months(low)} to ${months(high)})`;

/** How the figures were made and what they rest on, a sentence or two a line. */
export function methodSentences({ plan }: ReportFacts): string[] {
  const { life, prior } = plan;
  return [
    `How long they last here: half are gone by ${band(life.halfGone)}, one in ten by ${band(life.tenthGone)}. Wear-out ${life.wearOut.best.toFixed(1)} (${life.wearOut.low.toFixed(1)} to ${life.wearOut.high.toFixed(1)}; 1 = none, 3 = strong).`,
    restsOn(life.failures, life.lives, prior.medianMonths),
    'Low and high are the 5 % and 95 % points: they hold both chance and what is not known about the life of these batteries. They do not hold a change of use, climate, maker or policy.',
    'Enough 4 years in 5: in 4 of 5 such years as many would cover every failure, in the fifth some would be missing. 19 years in 20 is surer and dearer.',
    policySentence(plan),
    'Counted is each failure to come, replacements that fail again included; the number of places is kept. Batteries due now (condemned, still in a vehicle) stand apart.',
    notSaidSentence(plan.life),
    ageSentence(plan.ageUnknown, life.oldestFailure, plan.extrapolated),
    ...plan.ownPast.map(pastSentence),
    ...plan.standsOut.map(oddSentence),
    SOURCES,
  ].filter((sentence) => sentence !== '');
}

function pastSentence({ madeOn, years, expected, low, high, happened, inside }: PastTrial): string {
  const span = years === 1 ? 'the year' : `the ${years} years`;
  const verdict = inside ? 'inside the band' : 'OUTSIDE the band';
  return `Tried on your own past: made on ${isoDay(madeOn)}, the same method expected ${expected.toFixed(1)} failures (${low} to ${high}) in ${span} to as-of among the batteries then in service; ${happened} happened, ${verdict}.`;
}

const WHAT_TO_DO: Readonly<Record<string, string>> = {
  lot: 'hold and report the lot',
  vehicle: "look at the vehicle's charging system",
};

function oddSentence({ kind, name, failures, lives, expected }: OddGroup): string {
  const todo = WHAT_TO_DO[kind] ?? 'find out why';
  return `Stands out: ${kind} ${name}, ${failures} early failures among ${lives} lives where ${expected.toFixed(1)} would be expected: ${todo}.`;
}

function restsOn(failures: number, lives: number, median: number): string {
  const data = `${failures} failures among ${lives} lives on record`;
  const prior = `a rule of thumb (half gone by ${median} months, wide)`;
  if (failures < 5) return `This rests mostly on ${prior}: there are only ${data}.`;
  if (failures < 20) return `This rests on ${data}, blended with ${prior}, which still matters.`;
  return `This rests on ${data}; the rule of thumb no longer matters.`;
}

function notSaidSentence({ ifNotSaidFailed, halfGone }: ReportFacts['plan']['life']): string {
  if (ifNotSaidFailed === undefined) return '';
  return `Removals without a stated cause are taken as good batteries. Were they failures, half would be gone by ${months(ifNotSaidFailed.median)} instead of ${months(halfGone.best)} months.`;
}

function ageSentence(unknown: number, oldest: number, extrapolated: number): string {
  const batteries = unknown === 1 ? '1 battery of unknown age is' : `${unknown} batteries of unknown age are`;
  const ages = unknown === 0 ? '' : `${batteries} planned with the ages of their type and site. `;
  if (oldest === 0) return `${ages}No failure is on record: every figure here is extrapolated.`;
  const share = `${(100 * extrapolated).toFixed(0)} % of the failures expected within 12 months`;
  return `${ages}The oldest failure on record came at ${months(oldest)} months; ${share} come at ages beyond it and are extrapolated.`;
}

function policySentence({ settings, plannedAge }: ReportFacts['plan']): string {
  const renewed =
    plannedAge === Infinity
      ? 'Batteries are renewed when they fail'
      : `Batteries are renewed when they fail, or at ${months(plannedAge)} months`;
  const sets = settings.wholeSets ? '; one that fails renews its whole set' : '';
  const group = settings.groupBy === null ? '' : ` Each ${settings.groupBy} has a life of its own.`;
  return `${renewed}${sets}.${group} Units marked late should have been on order before the as-of date: order them now, they come after the lead time.`;
}

const SOURCES =
  'Sources: life by the Weibull law (Weibull 1951) from records that begin late and have not ended yet (Meeker and Escobar 1998), counts to come by the Poisson-binomial law averaged over what is not known about the life (Hong, Meeker and McCalley 2009), shares in whole units by largest remainders (Hamilton 1792).';
