/** How many arguments a function takes: one that may be left out makes "2 or 3", more make "1 to 4". */
export function argumentsText(least: number, most: number): string {
  if (least === most) return `${most} ${most === 1 ? 'argument' : 'arguments'}`;
  return `${least} ${most - least === 1 ? 'or' : 'to'} ${most} arguments`;
}

/** A reading with at least the digits of its instrument; more only where it lies a hair beyond its limit. */
export function withDigits(given: unknown, least: number): string {
  const value = Number(Number(given).toFixed(4));
  return value.toFixed(Math.max(least, String(value).split('.')[1]?.length ?? 0));
}
