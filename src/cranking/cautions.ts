/**
 * What to mind at each step of the work at a battery, as sentences for a person. All of it is common practice of
 * battery shops; local rules and licensed practice decide.
 */
export const CAUTIONS = {
  acid: 'Acid may be out: face shield and acid-proof gloves on, neutraliser and plenty of water at hand before you touch it.',
  shipping:
    'A cracked or leaking sealed battery ships as UN2794 (wet, filled with acid), no longer as non-spillable.',
  hot: 'Hot, hissing or smelling of rotten eggs: charger off before the clamps come off, no flames or sparks, stand clear, air the room, let it cool in open air. Do not test, charge or jump it.',
  groundCable:
    'Ground cable, usually the negative one, comes off first and goes on last, so that a slipping spanner makes no short circuit.',
  shortCircuit:
    'Rings and watch off, insulated tools, nothing of metal on top: a short circuit melts a spanner and burns a hand.',
  lifting: 'It weighs about 40 kg: two persons or a hoist, back straight, by its handles.',
  frozen:
    'A frozen battery can burst: do not charge, jump or test it. Thaw it slowly indoors without direct heat, then look for cracks.',
  chargingAir:
    'Charging makes hydrogen: ventilate, no flames, sparks or smoking near it, charger off before clamps go on or come off.',
  chargingAlone:
    'Charge each battery of a set by itself, with the charger set for its construction (AGM, flooded or gel), and stop at 50 C.',
  neverCharge: 'Never charge a battery that is frozen, cracked, bulged or hot.',
  loadTest:
    'Charged only, clamps tight before the load goes on, face shield on: a load test draws hundreds of amperes.',
  turnIn:
    'Cover its posts, keep it upright and turn it in for recycling; lead and acid never go into the waste.',
  localRules: 'Local rules and licensed practice decide.',
} as const satisfies Record<string, string>;

/** The key of a caution. */
export type Caution = keyof typeof CAUTIONS;

/** The cautions that belong to charging, in the order in which they matter. */
export const CHARGING_CAUTIONS: readonly Caution[] = ['chargingAir', 'chargingAlone', 'neverCharge'];

/**
 * The sentences of cautions.
 * @param keys which cautions
 * @returns their sentences, in the same order
 * @source commonPractice all of them
 * @example cautionTexts(['localRules'])[0] // "Local rules and licensed practice decide."
 */
export function cautionTexts(keys: readonly Caution[]): readonly string[] {
  return keys.map((key) => CAUTIONS[key]);
}
