/** Acid by weight [%] and the density line c0 + c1 T, T in kelvin [g/mL], as printed. */
const ROWS = [
  [1, 1.13185, -0.000435022],
  [5, 1.17171, -0.000479481],
  [10, 1.22164, -0.000531558],
  [20, 1.3219, -0.000622448],
  [25, 1.37209, -0.000660866],
  [30, 1.42185, -0.000693492],
  [35, 1.4705, -0.000718251],
  [40, 1.51767, -0.000732869],
  [45, 1.56584, -0.000744294],
  [50, 1.61834, -0.000761493],
] as const;

const KELVIN_AT_0_CELSIUS = 273.15;

/**
 * Density of dilute sulphuric acid from its strength and temperature. A straight line in temperature for each row
 * of strength, and straight lines between rows; good to about 0.001 g/mL within 5 to 45 %, 0 to 50 C.
 * @param percent acid by weight [%], 1 to 50
 * @param celsius temperature [C], 0 to 60
 * @returns density [g/mL]
 * @source perry density of aqueous sulphuric acid, straight lines in temperature (1 to 50 %, 0 to 60 C)
 * @example acidDensityPerry(35, 25) // 1.2564
 */
export function acidDensityPerry(percent: number, celsius: number): number {
  const found = ROWS.findIndex((row) => row[0] > percent);
  const above = found === -1 ? ROWS.length - 1 : Math.max(found, 1);
  const [low, high] = [ROWS[above - 1]!, ROWS[above]!];
  const share = (percent - low[0]) / (high[0] - low[0]);
  const at = (row: readonly [number, number, number]): number =>
    row[1] + row[2] * (celsius + KELVIN_AT_0_CELSIUS);
  return at(low) + share * (at(high) - at(low));
}
