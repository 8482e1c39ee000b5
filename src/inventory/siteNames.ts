import type { Findings } from './findings.ts';
import type { Lines } from './lines.ts';
import { lettersApart } from './nearest.ts';

/** A name this many letters from a site that stands in far more rows is rather a slip of it than another site. */
const SLIP_LETTERS = 2;
const FAR_MORE = 10;
/** Short names differ by few letters and are still other sites. */
const SHORT = 5;
/** Beyond so many names the column is no list of sites. */
const MOST_SITES = 500;

/**
 * The site of each row under the spelling that most rows use: names that differ in case, blanks or signs only are one
 * site. A name a letter or two from a far more frequent one is reported and stays its own.
 */
export function siteNames(sites: readonly string[], lines: Lines, findings: Findings): readonly string[] {
  const counts = new Map<string, number>();
  for (const site of sites) if (site !== '') counts.set(site, (counts.get(site) ?? 0) + 1);
  if (counts.size > MOST_SITES) return sites;
  const usual = usualSpellings(counts);
  const slips = slipsOf(counts, usual);
  if (slips.size === 0 && [...usual].every(([site, name]) => site === name)) return sites;
  return sites.map((site, line) => {
    const [name, meant] = [usual.get(site) ?? site, slips.get(site)];
    const found = { column: lines.head('site'), given: site };
    if (name !== site)
      findings.add(lines.rows[line]!, {
        ...found,
        kind: 'site written otherwise',
        done: `counted as ${name}`,
        group: `site ${name}`,
      });
    if (meant !== undefined)
      findings.add(lines.rows[line]!, {
        ...found,
        kind: 'site perhaps misspelt',
        done: `counted as a site of its own; ${meant} is in far more rows`,
        group: `site ${meant}`,
      });
    return name;
  });
}

const plainName = (site: string): string => site.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '');

function usualSpellings(counts: ReadonlyMap<string, number>): ReadonlyMap<string, string> {
  const best = new Map<string, string>();
  for (const [site, count] of counts) {
    const known = best.get(plainName(site));
    if (known === undefined || count > counts.get(known)!) best.set(plainName(site), site);
  }
  return new Map([...counts.keys()].map((site) => [site, best.get(plainName(site))!]));
}

function slipsOf(
  counts: ReadonlyMap<string, number>,
  usual: ReadonlyMap<string, string>,
): ReadonlyMap<string, string> {
  const slips = new Map<string, string>();
  for (const [site, count] of counts) {
    if (site.length < SHORT || usual.get(site) !== site || /\d/.test(site)) continue;
    for (const [other, more] of counts) {
      if (more < FAR_MORE * count || usual.get(other) === site) continue;
      if (lettersApart(plainName(site), plainName(other)) <= SLIP_LETTERS) slips.set(site, other);
    }
  }
  return slips;
}
