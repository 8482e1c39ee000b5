import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer, problem } from '../basics/outcome.ts';
import { ratingAmps } from './ratingAmps.ts';

/** Between which figures a converted rating lies, by the published rules [A]. */
export type RatingRange = { readonly low: number; readonly high: number };

/** One published rule of thumb: `to` = slope x `from` + constant. */
type Rule = { readonly slope: number; readonly constant: number };

/** Two rules for one pair of ratings; `seen` is false where they are from memory. */
type Pair = {
  readonly from: string;
  readonly to: string;
  readonly rules: readonly [Rule, Rule];
  readonly seen: boolean;
};

const times = (slope: number): Rule => ({ slope, constant: 0 });

const PAIRS: readonly Pair[] = [
  { from: 'DIN', to: 'SAE', rules: [{ slope: 1.5, constant: 40 }, times(1.7)], seen: true },
  { from: 'SAE', to: 'EN', rules: [times(0.92), times(1)], seen: false },
  { from: 'DIN', to: 'IEC', rules: [times(1.1), times(1.2)], seen: false },
  { from: 'SAE', to: 'CA', rules: [times(1.2), times(1.3)], seen: false },
];

const FROM_MEMORY = 'the rules for this pair are from memory, not seen in print';

/**
 * Between which figures a battery's cranking rating lies in another standard, from its rating in one. The standards
 * discharge to different voltages for different times, so no exact conversion exists: published rules differ by 6 to
 * 15 %. Meant for ordering and comparing labels; never judge a battery on it. A JIS performance rank is no number of
 * amperes and is not converted.
 * @param value rating in amperes of the standard `from` [A], 50 to 5000
 * @param from DIN, SAE, EN, IEC or CA, any case
 * @param to the other of a pair: SAE-DIN, SAE-EN, DIN-IEC or SAE-CA, both ways
 * @returns low and high [A]
 * @problem badInput       when the value is no number
 * @problem outOfRange     when the value is outside 50 to 5000 A
 * @problem notEnoughData  when no rule for the pair is known here
 * @source tradeDataSheets SAE = 1.5 DIN + 40
 * @source publicCalculators SAE = 1.7 DIN
 * @source fromMemory EN = 0.92 to 1.0 SAE; IEC = 1.1 to 1.2 DIN; CA (marine, 0 C) = 1.2 to 1.3 SAE
 * @example convertRating(400, 'DIN', 'SAE') // {"low":640,"high":680}
 */
export function convertRating(value: number, from: string, to: string): Outcome<RatingRange> {
  return andThen(ratingAmps(value, 'value'), (amps) =>
    andThen(ratingPair(from, to), ({ rules, backward, seen }) => {
      const ends = rules.map(({ slope, constant }) =>
        backward ? (amps - constant) / slope : slope * amps + constant,
      );
      const range = { low: Math.min(...ends), high: Math.max(...ends) };
      return answer(range, seen ? [] : [FROM_MEMORY]);
    }),
  );
}

/**
 * The rules that lead from one rating to another, and whether they are to be read backward.
 * @param from DIN, SAE, EN, IEC or CA, any case
 * @param to the other of the pair
 * @returns two rules, their direction, and whether they were seen in print
 * @problem notEnoughData  when no rule for the pair is known here
 * @example ratingPair('sae', 'din') // {"from":"DIN","to":"SAE","rules":[{"slope":1.5,"constant":40},{"slope":1.7,"constant":0}],"seen":true,"backward":true}
 */
export function ratingPair(from: string, to: string): Outcome<Pair & { readonly backward: boolean }> {
  const [first, second] = [from.trim().toUpperCase(), to.trim().toUpperCase()];
  const pair = PAIRS.find((each) => [first, second].includes(each.from) && [first, second].includes(each.to));
  if (pair !== undefined) return answer({ ...pair, backward: pair.to === first });
  const known = PAIRS.map((each) => `${each.from}-${each.to}`).join(', ');
  const because = first === 'JIS' || second === 'JIS' ? 'jisRank' : 'ratingsNotPaired';
  return problem('notEnoughData', because, 'from and to', `${from} to ${to}`, { more: { known } });
}
