/** How the publications in the files begin, and their keys in docs/sources.md. */
const KEYS: Readonly<Record<string, string>> = {
  Abernethy: 'abernethyEtAl1983',
  'Meeker & Escobar (1998)': 'meekerEscobar1998',
  NIST: 'nistHandbook',
};

/** The key of a publication in docs/sources.md, or "madeUp". */
export function sourceOfPublication(publication: string): string {
  return Object.entries(KEYS).find(([start]) => publication.startsWith(start))?.[1] ?? 'madeUp';
}
