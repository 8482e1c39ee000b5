import type { OddGroup } from '../life/standsOut.ts';
import type { Banded } from '../planning/lifeFigures.ts';
import type { PastTrial } from '../planning/ownPast.ts';
import type { Plan } from '../planning/plan.ts';
import type { DateShown } from './sheet.ts';
import { shownDay } from './shownDay.ts';

const months = (value: number): string => (value > 999 ? 'more than 999' : value.toFixed(0));
const band = ({ best, low, high }: Banded): string =>
  `${months(best)} months (${months(low)} to ${months(high)})`;

/** What these sentences tell of: a plan, its units apart. */
export type ToldPlan = Omit<Plan, 'units'>;

type Told = { readonly plan: ToldPlan; readonly settings?: { readonly dateShown: DateShown } };

/** How the figures were made and what they rest on, a sentence or two a line. */
export function methodSentences({ plan, settings }: Told): string[] {
  return [
    lifeSentence(plan),
    restsOnSentence(plan),
    'Low and high are the 5 % and 95 % points: they hold both chance and what is not known about the life of these batteries. They do not hold a change of use, climate, maker or policy.',
    'Enough 4 years in 5: in 4 of 5 such years as many would cover every failure, in the fifth some would be missing. 19 years in 20 is surer and dearer.',
    policySentence(plan),
    'Counted is each failure to come, replacements that fail again included; the number of places is kept. Batteries due now (condemned, still in a vehicle) stand apart.',
    notSaidSentence(plan.life),
    ageSentence(plan),
    ...plan.ownPast.map((trial) => pastSentence(trial, settings?.dateShown)),
    ...plan.standsOut.map(oddSentence),
    SOURCES,
  ].filter((sentence) => sentence !== '');
}

/** By when half and one in ten are gone. */
export function lifeSentence({ life: { halfGone, tenthGone, wearOut } }: ToldPlan): string {
  return `How long they last here: half are gone by ${band(halfGone)}, one in ten by ${band(tenthGone)}. Wear-out ${wearOut.best.toFixed(1)} (${wearOut.low.toFixed(1)} to ${wearOut.high.toFixed(1)}; 1 = none, 3 = strong).`;
}

/** What the same method said one or two years before, and what then happened, where no heading says so. */
export function pastSentence(trial: PastTrial, shown?: DateShown): string {
  return `Tried on your own past: ${pastTold(trial, shown).replace('Made', 'made')}`;
}

/** What the same method said one or two years before, and what then happened. */
export function pastTold(
  { madeOn, years, expected, low, high, happened, inside }: PastTrial,
  shown?: DateShown,
): string {
  const span = years === 1 ? 'the year' : `the ${years} years`;
  const verdict = inside ? 'inside the band' : 'outside the band';
  return `Made on ${shownDay(madeOn, shown)}, the same method expected ${expected.toFixed(1)} failures (${low} to ${high}) in ${span} to as-of among the batteries then in service; ${happened} happened, ${verdict}.`;
}

const WHAT_TO_DO: Readonly<Record<string, string>> = {
  lot: 'hold and report the lot',
  vehicle: "look at the vehicle's charging system",
};

function oddSentence({ kind, name, failures, lives, expected }: OddGroup): string {
  const todo = WHAT_TO_DO[kind] ?? 'find out why';
  return `Stands out: ${kind} ${name}, ${failures} early failures among ${lives} lives where ${expected.toFixed(1)} would be expected: ${todo}.`;
}

/** Whether the records or the rule of thumb carry the figures. */
export function restsOnSentence({ life: { failures, lives }, prior }: ToldPlan): string {
  const data = `${failures} ${failures === 1 ? 'failure' : 'failures'} among ${lives} ${lives === 1 ? 'life' : 'lives'} on record`;
  const thumb = `a rule of thumb (half gone by ${prior.medianMonths} months, wide)`;
  if (failures === 0) return `This rests mostly on ${thumb}: no failure is on record.`;
  if (failures < 5)
    return `This rests mostly on ${thumb}: there ${failures === 1 ? 'is' : 'are'} only ${data}.`;
  if (failures < 20) return `This rests on ${data}, blended with ${thumb}, which still matters.`;
  return `This rests on ${data}; the rule of thumb no longer matters.`;
}

function notSaidSentence({ ifNotSaidFailed, halfGone }: ToldPlan['life']): string {
  if (ifNotSaidFailed === undefined) return '';
  return `Removals without a stated cause are taken as good batteries. Were they failures, half would be gone by ${months(ifNotSaidFailed.median)} instead of ${months(halfGone.best)} months.`;
}

/** How many ages are unknown, and how much of the forecast lies beyond the oldest failure on record. */
export function ageSentence({
  ageUnknown: unknown,
  life: { oldestFailure: oldest },
  extrapolated,
}: ToldPlan): string {
  const batteries = unknown === 1 ? '1 battery of unknown age is' : `${unknown} batteries of unknown age are`;
  const ages = unknown === 0 ? '' : `${batteries} planned with the ages of their type and site. `;
  if (oldest === 0) return `${ages}No failure is on record: every figure here is extrapolated.`;
  const share = `${(100 * extrapolated).toFixed(0)} % of the failures expected within 12 months`;
  return `${ages}The oldest failure on record came at ${months(oldest)} months; ${share} come at ages beyond it and are extrapolated.`;
}

const overdueText = ({ overdueMonths }: ToldPlan['settings']): string =>
  overdueMonths === 0
    ? 'those older already at once'
    : `those older already evenly over ${months(overdueMonths)} months, the oldest first`;

function policySentence({ settings, plannedAge }: ToldPlan): string {
  const renewed =
    plannedAge === Infinity
      ? 'Batteries are renewed when they fail'
      : `Batteries are renewed when they fail, or at ${months(plannedAge)} months; ${overdueText(settings)}`;
  const sets = settings.wholeSets ? '; one that fails renews its whole set' : '';
  const group = settings.groupBy === null ? '' : ` Each ${settings.groupBy} has a life of its own.`;
  return `${renewed}${sets}.${group} Units marked late should have been on order before the as-of date: order them now, they come after the lead time.`;
}

const SOURCES =
  'Sources: life by the Weibull law (Weibull 1951) from records that begin late and have not ended yet (Meeker and Escobar 1998), counts to come by the Poisson-binomial law averaged over what is not known about the life (Hong, Meeker and McCalley 2009), shares in whole units by largest remainders (Hamilton 1792).';
