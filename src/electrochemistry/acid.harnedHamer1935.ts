/**
 * Molality [mol/kg], a [1e-6 V/K] and b [1e-8 V/K2] of the cell's e.m.f. against temperature. From memory. The
 * column of voltages at 0 C that handbooks print beside them is left out: as remembered it is 4 to 21 mV a cell low.
 */
const ROWS = [
  [0.05, -310, 134],
  [0.1, -265, 129],
  [0.2, -181, 128],
  [0.5, -45, 126],
  [1, 56.1, 108],
  [2, 159, 103],
  [3, 178, 97],
  [4, 177, 91],
  [5, 167, 87],
  [6, 162, 85],
  [7, 153, 80],
] as const;

/** The temperature at which the e.m.f. itself is known; the term below is nothing there. */
const REFERENCE_CELSIUS = 25;

/**
 * What a cell's rest voltage at a temperature has more than at 25 C. a (t - 25) + b (t2 - 625), a and b on straight
 * lines between rows of molality and held at the first and last row; good to about 0.04 mV/K a cell within 0 to 60 C,
 * an extrapolation below 0 C (allow 10 mV a battery at -30 C).
 * @param molality acid in water [mol/kg], 0.05 to 7, held outside
 * @param celsius temperature [C], 0 to 60, extrapolated to -40
 * @returns voltage to add to the cell's at 25 C [V]
 * @source harnedHamer1935 columns a and b, from memory (0.05 to 7 mol/kg, 0 to 60 C)
 * @example temperatureTermHarnedHamer1935(5, 35) // 0.002192
 */
export function temperatureTermHarnedHamer1935(molality: number, celsius: number): number {
  const above = ROWS.findIndex((row) => row[0] > molality);
  const high = ROWS[above === -1 ? ROWS.length - 1 : above]!;
  const low = ROWS[above === -1 ? ROWS.length - 1 : Math.max(above - 1, 0)]!;
  const share = high === low ? 0 : (molality - low[0]) / (high[0] - low[0]);
  const a = (low[1] + share * (high[1] - low[1])) * 1e-6;
  const b = (low[2] + share * (high[2] - low[2])) * 1e-8;
  return a * (celsius - REFERENCE_CELSIUS) + b * (celsius ** 2 - REFERENCE_CELSIUS ** 2);
}
