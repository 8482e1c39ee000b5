/**
 * Rounds parts to a step so that they add up to the rounded total: each is rounded down, then the largest
 * remainders take the steps that are left (Hamilton's method). Equal remainders go to the earlier part.
 * @param parts  amounts, 0 or more
 * @param step   1 for whole units, 0.1 for one decimal
 * @param total  what they are to add up to; default their own sum rounded to the step
 * @returns one rounded amount for each part, in order
 * @source hamilton1792 largest remainder
 * @example shareOut([1.2, 1.4, 1.4], 1) // [1,2,1]
 */
export function shareOut(parts: readonly number[], step = 1, total?: number): number[] {
  const sum = parts.reduce((all, part) => all + part, 0);
  const steps = Math.round((total ?? sum) / step);
  const scale = sum > 0 ? steps / sum : 0;
  const floors = parts.map((part) => Math.floor(part * scale + 1e-9));
  const left = steps - floors.reduce((all, floor) => all + floor, 0);
  const order = parts
    .map((part, index) => ({ index, remainder: part * scale - floors[index]! }))
    .sort((a, b) => b.remainder - a.remainder || a.index - b.index);
  for (const { index } of order.slice(0, Math.max(0, left))) floors[index]! += 1;
  const digits = Math.max(0, Math.round(-Math.log10(step)));
  return floors.map((count) => Number((count * step).toFixed(digits)));
}
