import type { Construction } from '../service/battery.ts';
import type { Field } from './fields.ts';
import type { Findings } from './findings.ts';
import type { ConstructionText } from './inventory.ts';
import type { Lines } from './lines.ts';

/** The construction of each row, and whether it was taken for want of a word. */
export type Constructions = {
  readonly of: readonly Construction[];
  readonly assumed: Uint8Array;
  /** Each text that decided, or that would have to: the most frequent first. */
  readonly texts: readonly ConstructionText[];
};

/** Where the construction is looked for, in this order. */
const LOOKED_IN: readonly Field[] = ['construction', 'type', 'stockNumber', 'part'];

const FLOODED = /\b(flooded|wet|antimony|vented|filler caps?|low maintenance|conventional|unsealed)\b/i;
const GEL = /\bgel\b/i;
const AGM = /\b(agm|absorbed glass|absorbent glass|glass mat|vrla|starved|recombinant)\b/i;

/** The construction that words name, or undefined. */
export function constructionIn(text: string): Construction | undefined {
  const found = [AGM.test(text), GEL.test(text), FLOODED.test(text)];
  if (found.filter(Boolean).length !== 1) return undefined;
  if (found[0] === true) return 'AGM';
  return found[1] === true ? 'gel' : 'flooded';
}

type Named = Readonly<Record<string, Construction>>;

/**
 * The construction of each row from its construction, type, stock number or part: what the settings say of the
 * text, else its words. Where nothing says it AGM is taken, counted, and reported once for each type where a
 * battery is judged at all.
 */
export function constructionColumn(
  lines: Lines,
  named: Named,
  isJudged: boolean,
  findings: Findings,
): Constructions {
  const seen = new Map<string, { readonly told: Told; count: number }>();
  const texts = LOOKED_IN.map((field) => lines.text(field));
  const assumed = new Uint8Array(lines.count);
  const unknown = new Map<string, number[]>();
  const of = Array.from({ length: lines.count }, (_, line): Construction => {
    const own = texts.map((column) => column[line]!);
    const key = own.join('\n');
    const known = seen.get(key) ?? { told: constructionOf(own, named), count: 0 };
    if (known.count === 0) seen.set(key, known);
    known.count += 1;
    if (known.told.from !== 'assumed') return known.told.construction;
    assumed[line] = 1;
    const like = unknown.get(own[1]!);
    if (like === undefined) unknown.set(own[1]!, [line]);
    else like.push(line);
    return 'AGM';
  });
  if (isJudged) for (const [type, found] of unknown) reportUnknown(lines, type, found, findings);
  if (isJudged) reportFlooded(lines, of, named, findings);
  return { of, assumed, texts: textsOf(seen.values()) };
}

type Told = Omit<ConstructionText, 'count'>;

function constructionOf(texts: readonly string[], named: Named): Told {
  for (const [index, text] of texts.entries()) {
    if (text === '') continue;
    const told = { text, field: LOOKED_IN[index]! };
    const said = namedOf(text, named);
    if (said !== undefined) return { ...told, construction: said, from: 'settings' };
    const words = ownVolts(text, texts[0]!) ?? constructionIn(text);
    if (words !== undefined) return { ...told, construction: words, from: 'words' };
  }
  const first = Math.max(
    0,
    texts.findIndex((text) => text !== ''),
  );
  return { text: texts[first]!, field: LOOKED_IN[first]!, construction: 'AGM', from: 'assumed' };
}

function textsOf(seen: Iterable<{ readonly told: Told; readonly count: number }>): ConstructionText[] {
  const texts = new Map<string, ConstructionText>();
  for (const { told, count } of seen) {
    const key = `${told.field}\n${told.text}`;
    texts.set(key, { ...told, count: count + (texts.get(key)?.count ?? 0) });
  }
  return [...texts.values()].sort((a, b) => b.count - a.count);
}

const namedOf = (text: string, named: Named): Construction | undefined =>
  Object.hasOwn(named, text) ? named[text] : undefined;

// A number in the construction column is this battery's own full rest voltage.
function ownVolts(text: string, construction: string): Construction | undefined {
  const volts = text === construction ? Number(text) : Number.NaN;
  return volts >= 12 && volts <= 13.5 ? volts : undefined;
}

function reportUnknown(lines: Lines, type: string, found: readonly number[], findings: Findings): void {
  const given = `${found.length} ${found.length === 1 ? 'battery' : 'batteries'} of type ${type === '' ? 'not said' : type}`;
  const column = lines.head('construction') || lines.head('type');
  findings.add(lines.rows[found[0]!]!, {
    kind: 'construction unknown',
    count: found.length,
    column,
    given,
    group: `construction of type ${type}`,
    ...(type === ''
      ? {}
      : { subject: { about: 'construction', texts: [type] } as const, setting: 'constructions' }),
  });
}

type Texts = readonly string[];

/** A stock number is that of flooded batteries where so many rows, and this share of them, say so. */
const ROWS_ALIKE = 3;
const SHARE_ALIKE = 0.7;

// Words that say flooded beside a construction that says AGM: by the settings, by another column of the row, or by the
// other rows of its stock number.
function reportFlooded(lines: Lines, of: readonly Construction[], named: Named, findings: Findings): void {
  const [types, stock] = [lines.text('type'), lines.text('stockNumber')];
  const flooded = floodedStock(stock, of);
  for (let line = 0; line < lines.count; line += 1) {
    if (of[line] !== 'AGM') continue;
    const why =
      floodedWords(lines, line, named) ??
      (flooded.has(stock[line]!) ? `${stock[line]!} is flooded in other rows` : undefined);
    if (why === undefined) continue;
    const given = [types[line]!, stock[line]!].filter((text) => text !== '').join(', ');
    findings.add(lines.rows[line]!, {
      kind: 'flooded judged as AGM',
      column: lines.head('type'),
      given,
      done: `judged as AGM; ${why}`,
      group: `flooded judged as AGM: ${given}`,
      ...(types[line]! === ''
        ? {}
        : { subject: { about: 'construction', texts: [types[line]!] } as const, setting: 'constructions' }),
    });
  }
}

function floodedWords(lines: Lines, line: number, named: Named): string | undefined {
  for (const field of ['type', 'part', 'construction'] as const) {
    const text = lines.text(field)[line]!;
    if (text === '' || constructionIn(text) !== 'flooded') continue;
    return namedOf(text, named) === undefined ? `${text} says flooded` : 'the settings say AGM';
  }
  return undefined;
}

function floodedStock(stock: Texts, of: readonly Construction[]): ReadonlySet<string> {
  const counts = new Map<string, { flooded: number; all: number }>();
  stock.forEach((text, line) => {
    if (text === '') return;
    const count = counts.get(text) ?? { flooded: 0, all: 0 };
    if (count.all === 0) counts.set(text, count);
    count.all += 1;
    if (of[line] === 'flooded') count.flooded += 1;
  });
  const alike = [...counts].filter(
    ([, { flooded, all }]) => flooded >= ROWS_ALIKE && flooded >= SHARE_ALIKE * all,
  );
  return new Set(alike.map(([text]) => text));
}
