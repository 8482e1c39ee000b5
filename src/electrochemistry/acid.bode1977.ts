/** Electrode potentials of a lead-acid cell at 25 C [V] as powers of log10(molality), as printed. */
const POSITIVE = [1.628, 0.074, 0.033, 0.043, 0.022] as const;
const NEGATIVE = [-0.294, -0.074, -0.03, -0.031, -0.012] as const;

const [c0, c1, c2, c3, c4] = POSITIVE.map((each, power) => each - NEGATIVE[power]!) as [
  number,
  number,
  number,
  number,
  number,
];

/**
 * Rest voltage of one cell at 25 C from the strength of its acid. Positive less negative electrode, both at rest
 * in the same acid; good to about 0.6 mV within 0.5 to 6 mol/kg, an extrapolation good to about 3 mV above.
 * @param molality acid in water [mol/kg], 0.1 to 12
 * @returns cell voltage [V]
 * @source bode1977 polynomial in log10 of molality (0.1 to 6 mol/kg, 25 C)
 * @example cellVoltageBode1977(1) // 1.922
 */
export function cellVoltageBode1977(molality: number): number {
  const l = Math.log10(molality);
  return c0 + l * (c1 + l * (c2 + l * (c3 + l * c4)));
}
