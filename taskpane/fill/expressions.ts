import type { Field } from '../../src/inventory/fields.ts';
import { MONTHS_ALONE_CELSIUS } from '../../src/inventory/condition.ts';
import type { ConstructionText, Inventory } from '../../src/inventory/inventory.ts';
import type { Settings } from '../../src/inventory/settings.ts';
import { unitOfHead } from '../../src/inventory/temperatureColumn.ts';
import { DEFAULT_LAYOUT } from '../../src/label/layout.ts';
import type { FillKey } from './columns.ts';
import type { Case, Expression } from './expression.ts';

/** What formulas for an inventory are made from. */
export type FillFacts = {
  readonly columns: Inventory['columns'];
  readonly layouts: Inventory['layouts'];
  readonly constructions: Inventory['constructions'];
  readonly settings: Settings;
  /** Shape and scale of how long batteries last here, where it is known. */
  readonly life: { readonly shape: number; readonly scale: number } | undefined;
};

type Maker = (facts: FillFacts) => Expression | undefined;

/** What each column is computed from; undefined where the sheet has no column for it. */
export function expressionFor(key: FillKey, facts: FillFacts): Expression | undefined {
  return MAKERS[key](facts);
}

const NOTHING: Expression = { kind: 'nothing' };
const AS_OF: Expression = { kind: 'asOf' };
const value = (given: string | number): Expression => ({ kind: 'value', value: given });
const field = (name: Field): Expression => ({ kind: 'field', field: name });
const call = (id: string, ...given: readonly Expression[]): Expression => ({ kind: 'call', id, given });
const has = ({ columns }: FillFacts, name: Field): boolean => columns[name] !== undefined;
const fieldOr = (facts: FillFacts, name: Field, other: Expression): Expression =>
  has(facts, name) ? field(name) : other;
const orElse = (facts: FillFacts, name: Field, other: Expression): Expression =>
  has(facts, name) ? { kind: 'orElse', field: name, other } : other;

const MAKERS: Readonly<Record<FillKey, Maker>> = {
  made: madeOf,
  lot: (facts) => {
    const read = has(facts, 'code')
      ? byLayout(facts, (layout) => call('LOTNUMBER', field('code'), layout))
      : undefined;
    if (!has(facts, 'lot')) return read;
    return read === undefined ? field('lot') : { kind: 'orElse', field: 'lot', other: read };
  },
  monthsInService: (facts) =>
    has(facts, 'installed')
      ? call('MONTHSINSERVICE', field('installed'), orElse(facts, 'removed', AS_OF))
      : undefined,
  monthsOnShelf: (facts) => {
    const made = madeOf(facts);
    return made && call('MONTHSONSHELF', made, orElse(facts, 'installed', AS_OF));
  },
  charge: (facts) =>
    has(facts, 'restVolts')
      ? recent(facts, call('STATEOFCHARGE', field('restVolts'), ...conditions(facts)))
      : undefined,
  verdict: (facts) => judged(facts, 'VERDICT'),
  reason: (facts) => judged(facts, 'VERDICTREASON'),
  chargeBy: chargeByOf,
  chance12: (facts) => {
    const { life } = facts;
    if (life === undefined || !has(facts, 'installed')) return undefined;
    const age: Expression = { kind: 'monthsSince', field: 'installed' };
    const chance = call('FAILUREWITHIN', age, value(12), value(life.shape), value(life.scale));
    const known: Expression = { kind: 'blankWhere', field: 'installed', is: 'empty', then: chance };
    return has(facts, 'removed')
      ? { kind: 'blankWhere', field: 'removed', is: 'filled', then: known }
      : known;
  },
};

function madeOf(facts: FillFacts): Expression | undefined {
  const read = has(facts, 'code')
    ? byLayout(facts, (layout) => call('MANUFACTUREDATE', field('code'), AS_OF, layout))
    : undefined;
  if (!has(facts, 'made')) return read;
  return read === undefined ? field('made') : { kind: 'orElse', field: 'made', other: read };
}

/** The layout that most makers use stands last; the others are named. */
function byLayout(facts: FillFacts, read: (layout: Expression) => Expression): Expression {
  const layouts = Object.entries(facts.layouts);
  const written = (layout: string): Expression => read(layout === DEFAULT_LAYOUT ? NOTHING : value(layout));
  const usual = mostFrequent(layouts.map(([, layout]) => layout)) ?? DEFAULT_LAYOUT;
  const others = layouts.filter(([, layout]) => layout !== usual);
  if (others.length === 0 || !has(facts, 'maker')) return written(usual);
  const cases = grouped(others, written);
  return { kind: 'cases', field: 'maker', cases, otherwise: written(usual) };
}

/** Texts by what they stand for, in the order in which each first comes. */
function grouped<T>(
  pairs: readonly (readonly [string, T])[],
  then: (meant: T) => Expression,
): readonly Case[] {
  const words = new Map<T, string[]>();
  for (const [text, meant] of pairs) words.set(meant, [...(words.get(meant) ?? []), text]);
  return [...words].map(([meant, texts]) => [texts, then(meant)]);
}

function mostFrequent(texts: readonly string[]): string | undefined {
  const counts = new Map<string, number>();
  for (const text of texts) counts.set(text, (counts.get(text) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0];
}

/** Temperature, construction and unit, as the functions take them one after the other. */
function conditions(facts: FillFacts): readonly Expression[] {
  return [fieldOr(facts, 'temperature', NOTHING), constructionOf(facts), unitOf(facts)];
}

function unitOf(facts: FillFacts): Expression {
  if (!has(facts, 'temperature')) return NOTHING;
  const unit = facts.settings.temperatureUnit ?? unitOfHead(facts.columns.temperature);
  return unit === 'F' ? value('F') : NOTHING;
}

const ORDER: readonly Field[] = ['construction', 'type', 'stockNumber', 'part'];

/** The construction by what the texts say; AGM, which the functions take by themselves, where nothing does. */
function constructionOf({ constructions }: FillFacts): Expression {
  if (constructions.every(({ construction }) => construction === 'AGM')) return NOTHING;
  return ORDER.reduceRight<Expression>((otherwise, name) => {
    const texts = constructions.filter((one) => one.field === name && one.from !== 'assumed');
    if (texts.length === 0 || texts.every((one) => same(one, otherwise))) return otherwise;
    const cases = grouped(
      texts.map(({ text, construction }) => [text, construction] as const),
      value,
    );
    return { kind: 'cases', field: name, cases, otherwise };
  }, value('AGM'));
}

const same = ({ construction }: ConstructionText, otherwise: Expression): boolean =>
  otherwise.kind === 'value' && otherwise.value === construction;

function judged(facts: FillFacts, id: string): Expression | undefined {
  const reading = (['reading', 'loadVolts'] as const).find((name) => has(facts, name));
  if (reading === undefined && !has(facts, 'restVolts') && !has(facts, 'damage')) return undefined;
  const [temperature, construction, unit] = conditions(facts);
  const test = call(
    id,
    reading === undefined ? NOTHING : field(reading),
    fieldOr(facts, 'least', NOTHING),
    fieldOr(facts, 'restVolts', NOTHING),
    temperature!,
    fieldOr(facts, 'retest', NOTHING),
    construction!,
    unit!,
    fieldOr(facts, 'damage', NOTHING),
  );
  return recent(facts, test);
}

function recent(facts: FillFacts, then: Expression): Expression {
  if (!has(facts, 'testedOn')) return then;
  return { kind: 'recent', field: 'testedOn', days: facts.settings.testMonths * 30.4375 + 1, then };
}

/** For stock only: what stands in a vehicle is charged by it. */
function chargeByOf(facts: FillFacts): Expression | undefined {
  if (!has(facts, 'chargedOn')) return undefined;
  const due = call('RECHARGEBY', field('chargedOn'), storeTemperature(facts), constructionOf(facts));
  return (['removed', 'installed'] as const)
    .filter((name) => has(facts, name))
    .reduce<Expression>((then, name) => ({ kind: 'blankWhere', field: name, is: 'filled', then }), due);
}

function storeTemperature(facts: FillFacts): Expression {
  const averages = Object.entries(facts.settings.sites).flatMap(([name, { average }]) =>
    average === undefined ? [] : [[name, average] as const],
  );
  const otherwise = value(MONTHS_ALONE_CELSIUS);
  if (averages.length === 0) return otherwise;
  const cases = grouped(averages, value);
  return (['site', 'storagePlace'] as const)
    .filter((name) => has(facts, name))
    .reduce<Expression>((rest, name) => ({ kind: 'cases', field: name, cases, otherwise: rest }), otherwise);
}
