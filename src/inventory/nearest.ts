/**
 * The word of a list that differs from a given one by the fewest letters changed, added or left out; case
 * doesn't matter.
 */
export function nearest(given: string, words: readonly string[]): string {
  let [best, fewest] = ['', Number.POSITIVE_INFINITY];
  for (const word of words) {
    const letters = lettersApart(given.toLowerCase(), word.toLowerCase());
    if (letters < fewest) [best, fewest] = [word, letters];
  }
  return best;
}

/** How many letters must be changed, added or left out to make one word of the other. */
export function lettersApart(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const changed = row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(changed, row[j]! + 1, next[j - 1]! + 1));
    }
    row = next;
  }
  return row[b.length]!;
}
