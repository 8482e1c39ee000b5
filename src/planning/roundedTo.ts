// Sums and products carry dust, such as 44.0000000001 or 3.0499999999999994, which must not turn anything up or down.
const withoutDust = (amount: number): number => Number(amount.toFixed(6));

/**
 * Rounds to so many decimals, halves away from 0: what ROUND does in every spreadsheet, so that a plan and the
 * sheet that is written from it agree to the last digit.
 * @param amount  any number
 * @param places  decimals, 0 or more
 * @returns the amount; 0.25 x 12.2 to one place is 3.1
 */
export function roundedTo(amount: number, places: number): number {
  const scale = 10 ** places;
  const steps = Math.round(withoutDust(Math.abs(amount) * scale));
  return steps === 0 ? 0 : (Math.sign(amount) * steps) / scale;
}

/** Rounds up to whole units, free of the dust of floating point; never below 0. */
export function wholeUnits(amount: number): number {
  return Math.ceil(withoutDust(Math.max(0, amount)));
}
