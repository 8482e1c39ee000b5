import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** A seeded source of chance: the same seed draws the same things in the same order, on every machine. */
export type Chance = {
  /** A whole number between the two, both included. */
  readonly whole: (low: number, high: number) => number;
  /** A number between the two. */
  readonly between: (low: number, high: number) => number;
  /** True with that probability. */
  readonly happens: (probability: number) => boolean;
  /** One of the choices, each as likely as the next. */
  readonly pick: <T>(choices: readonly T[]) => T;
  /** One of the choices by its weight. */
  readonly weighted: <T extends { readonly weight: number }>(choices: readonly T[]) => T;
  /** A bell-shaped number of that mean and spread. */
  readonly bell: (mean: number, spread: number) => number;
  /** A waiting time at a constant rate. */
  readonly waiting: (ratePerMonth: number) => number;
  /** A life by the Weibull law. */
  readonly life: (shape: number, scale: number) => number;
  /** The list in a chance order; the list itself stays as it is. */
  readonly shuffled: <T>(list: readonly T[]) => T[];
};

/** A source of chance that starts at a seed. */
export function chanceFrom(seed: number): Chance {
  const generator = xoroshiro128plus(seed);
  const unit = (): number => uniformFloat64(generator);
  const whole = (low: number, high: number): number => uniformInt(generator, low, high);
  const waiting = (rate: number): number => -Math.log1p(-unit()) / rate;
  return {
    whole,
    between: (low, high) => low + (high - low) * unit(),
    happens: (probability) => unit() < probability,
    pick: (choices) => choices[whole(0, choices.length - 1)]!,
    weighted: (choices) => byWeight(choices, unit()),
    // Twelve uniform numbers less six: near enough to a normal, and never far out.
    bell: (mean, spread) => mean + spread * (Array.from({ length: 12 }, unit).reduce((a, b) => a + b, 0) - 6),
    waiting,
    life: (shape, scale) => scale * waiting(1) ** (1 / shape),
    shuffled: (list) => shuffle(list, whole),
  };
}

function byWeight<T extends { readonly weight: number }>(choices: readonly T[], share: number): T {
  let left = share * choices.reduce((sum, choice) => sum + choice.weight, 0);
  for (const choice of choices) {
    left -= choice.weight;
    if (left < 0) return choice;
  }
  return choices[choices.length - 1]!;
}

function shuffle<T>(list: readonly T[], whole: (low: number, high: number) => number): T[] {
  const mixed = [...list];
  for (let last = mixed.length - 1; last > 0; last -= 1) {
    const other = whole(0, last);
    [mixed[last], mixed[other]] = [mixed[other]!, mixed[last]!];
  }
  return mixed;
}
