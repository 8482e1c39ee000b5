import type { Cell } from './inventory.ts';
import { cellText } from './cells.ts';
import type { Field, FieldSpec } from './fields.ts';
import { FIELD_SPECS, FIELDS } from './fields.ts';

// Headers that hold a field's word and mean something else.
const OTHER =
  /^(veh|vehicle|truck|equipment|equip) (type|make|maker|model|class|description|manufacturer)\b|\b(by|initials|remarks?|notes?|comments?|due|next|age|mileage|odometer|km|hours|warranty|supplied|po|qty|quantity|percent|soc|charger|url|photo|phone|email)$|^(remarks?|notes?|comments?|next|age|months?|warranty|entry age|exit age|qty|quantity|count|number of|hours|days|due)\b|\b(due|expiry|expires|warranty)\b/;

/**
 * The words of a header in one form: lower case, without signs, a name run together taken apart
 * (`InstallDate`, `install_date` and `Install date:` are one).
 */
export function headerWords(header: Cell): string {
  return cellText(header)
    .replace(/([a-z])([A-Z][a-z])/g, '$1 $2')
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '')
    .toLowerCase()
    .replaceAll('#', ' no ')
    .replace(/[^a-z0-9]+/g, ' ')
    .trim();
}

// The header without its unit: "OCV (V)", "Rest voltage, V", "Temp [°C]".
function withoutUnit(header: string): string {
  return header.replace(/[([{][^)\]}]*[)\]}]?/g, ' ').replace(/,\s*(v|a|amps?|volts?|°?\s*[cf])\s*$/i, ' ');
}

type Known = { readonly words: string; readonly field: Field };

const sorted = (pick: (spec: FieldSpec) => readonly string[]): readonly Known[] =>
  FIELDS.flatMap((field) => pick(FIELD_SPECS[field]).map((words) => ({ words, field }))).sort(
    (a, b) => b.words.length - a.words.length,
  );

const INSIDE = sorted((spec) => spec.within);

const EXACT: ReadonlyMap<string, readonly Field[]> = (() => {
  const map = new Map<string, Field[]>();
  for (const { words, field } of sorted((spec) => spec.headers))
    map.set(words, [...(map.get(words) ?? []), field]);
  return map;
})();

/** How well a header names a field: 1 in so many words, less where the words stand inside a longer header. */
export type HeaderMatch = { readonly field: Field; readonly score: number };

/** The fields that a header may name, the best first. */
export function headerMatches(header: Cell): readonly HeaderMatch[] {
  const words = headerWords(header);
  if (words === '' || words.length > 60) return [];
  const plain = headerWords(withoutUnit(cellText(header)));
  const exact = EXACT.get(words) ?? EXACT.get(plain);
  if (exact !== undefined) return exact.map((field) => ({ field, score: 1 }));
  if (OTHER.test(words)) return [];
  return insideMatches(words);
}

function insideMatches(words: string): readonly HeaderMatch[] {
  const padded = ` ${words} `;
  const found = new Map<Field, number>();
  for (const known of INSIDE) {
    if (found.has(known.field) || !padded.includes(` ${known.words} `)) continue;
    found.set(known.field, 0.5 + (0.4 * known.words.length) / words.length);
  }
  return [...found].map(([field, score]) => ({ field, score })).sort((a, b) => b.score - a.score);
}
