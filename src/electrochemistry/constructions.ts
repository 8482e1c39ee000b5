import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer, problem } from '../basics/outcome.ts';
import type { Construction } from '../service/battery.ts';
import { acidFromRestVolts, acidMoleFraction, CELSIUS_AT_80_F } from './acid.ts';

/** The acid of a battery when full and when empty, as molality [mol/kg] and as mole fraction. */
export type Acids = {
  readonly full: number;
  readonly empty: number;
  readonly fullFraction: number;
  readonly emptyFraction: number;
};

/** Rest voltages when full and empty [V], and the battery temperature at which they hold [C]. */
type Ends = { readonly fullVolts: number; readonly emptyVolts: number; readonly celsius: number };

// Published for full AGM batteries: 12.8 to 13.0 V after 3 to 8 h; over 12.85 V off charge. The middle is taken.
const AGM: Ends = { fullVolts: 12.85, emptyVolts: 11.85, celsius: 25 };
const FLOODED: Ends = { fullVolts: 12.65, emptyVolts: 11.89, celsius: CELSIUS_AT_80_F };

/** This battery's own rested full-charge voltage at 25 C that may stand for a construction [V]. */
const LEAST_OWN_VOLTS = 12;
const MOST_OWN_VOLTS = 13.5;

const WORDS: ReadonlyMap<string, Construction> = new Map<string, Construction>([
  ['AGM', 'AGM'],
  ['FLOODED', 'flooded'],
  ['GEL', 'gel'],
]);

/**
 * The construction that a cell names: AGM, flooded or gel in any case, or a number of volts; empty means AGM.
 * @param given text, number or nothing; 0 counts as nothing
 * @returns the construction
 * @problem badInput    when it is another text
 * @problem outOfRange  when it is a number outside 12 to 13.5 V
 * @example constructionFrom(' agm ') // "AGM"
 */
export function constructionFrom(given: unknown): Outcome<Construction> {
  if (given === null || given === undefined || given === 0) return answer<Construction>('AGM');
  if (typeof given === 'number') return andThen(endsOf(given), () => answer<Construction>(given));
  const word = String(given).trim().toUpperCase();
  const known = word === '' ? 'AGM' : WORDS.get(word);
  if (known !== undefined) return answer<Construction>(known);
  return problem('badInput', 'notAWord', 'construction', given, {
    more: { allowed: '"AGM", "flooded", "gel" or this battery\'s own full rest voltage, 12.0 to 13.5' },
  });
}

// Columns repeat a few constructions; each is solved for its acids once.
const acidsSeen = new Map<Construction, Outcome<Acids>>();
const MOST_ACIDS_KEPT = 5_000;

/**
 * The full and the empty acid of a construction, from its rest voltages at both ends. Gel has the AGM acids until a
 * source for gel is found. A number is this battery's own rested full-charge voltage at 25 C with the AGM empty end:
 * the nearer it is to 12 V the fewer volts make the whole scale (12.0 leaves 0.15 V: 10 mV is then 7 points of
 * charge against 1 on the AGM scale), and a good battery that is really full rests at 12.5 V or more.
 * @param construction AGM, flooded, gel, or a number [V], 12.0 to 13.5
 * @returns full and empty acid [mol/kg and mole fraction]
 * @problem outOfRange  when a number is outside 12.0 to 13.5 V
 * @source tm9-6115-730-24 AGM full at 12.8 to 13.0 V after 3 to 8 h at about 70 F
 * @source tb9-6140-252-13 AGM over 12.85 V off charge, WP 0011
 * @source bciCredited flooded 12.65 V full and 11.89 V empty at 80 F
 * @example andThen(acidsOf('AGM'), (acids) => answer(acids.full)) // 6.600
 */
export function acidsOf(construction: Construction): Outcome<Acids> {
  const known = acidsSeen.get(construction);
  if (known !== undefined) return known;
  const acids = andThen(endsOf(construction), solvedAcids);
  if (acidsSeen.size >= MOST_ACIDS_KEPT) acidsSeen.clear();
  acidsSeen.set(construction, acids);
  return acids;
}

function endsOf(construction: Construction): Outcome<Ends> {
  if (construction === 'flooded') return answer(FLOODED);
  if (typeof construction !== 'number') return answer(AGM);
  if (construction >= LEAST_OWN_VOLTS && construction <= MOST_OWN_VOLTS)
    return answer({ ...AGM, fullVolts: construction });
  return problem('outOfRange', 'outOfLimits', 'construction', construction, {
    limits: ['12.0', `${MOST_OWN_VOLTS} V`],
  });
}

function solvedAcids(ends: Ends): Outcome<Acids> {
  return andThen(acidFromRestVolts(ends.fullVolts, ends.celsius), (full) =>
    andThen(acidFromRestVolts(ends.emptyVolts, ends.celsius), (empty) =>
      answer({
        full,
        empty,
        fullFraction: acidMoleFraction(full),
        emptyFraction: acidMoleFraction(empty),
      }),
    ),
  );
}
