import { FIELD_SPECS } from './fields.ts';
import type { FindingKind } from './findingKinds.ts';
import type { CheckGroup } from './rowsToCheck.ts';
import type { GivenSettings } from './settings.ts';
import type { Subject } from './subject.ts';

/** One decision for all rows of a cause: what the user is offered, and what it changes in the settings. */
export type Decision = { readonly label: string; readonly change: GivenSettings };

const CAUSES = [
  ['failed', 'They failed'],
  ['good', 'They were good'],
  ['damaged', 'They were damaged'],
  ['notSaid', 'Nobody knows'],
] as const;

const BY_KIND: Partial<Record<FindingKind, readonly Decision[]>> = {
  'text date that reads two ways': [
    { label: 'The day stands first: 03/04/2026 is 3 April 2026', change: { dateOrder: 'dayFirst' } },
    { label: 'The month stands first: 03/04/2026 is 4 March 2026', change: { dateOrder: 'monthFirst' } },
  ],
  'temperature must be Fahrenheit': [
    { label: 'The whole column is in degrees Fahrenheit', change: { temperatureUnit: 'F' } },
    { label: 'The whole column is in degrees Celsius', change: { temperatureUnit: 'C' } },
  ],
  'hidden rows counted': [{ label: 'Count visible rows only', change: { visibleOnly: true } }],
};

/**
 * The decisions that settle all rows of a cause at once; none where each row needs its own look.
 * @param group  rows to check with one cause
 * @returns what the user is offered, each with its change of the settings
 * @example decisionsFor({ kind: 'hidden rows counted' }).length // 1
 */
export function decisionsFor({ kind, subject }: Pick<CheckGroup, 'kind' | 'subject'>): readonly Decision[] {
  return subject === undefined ? (BY_KIND[kind] ?? []) : aboutSubject(subject);
}

function aboutSubject(subject: Subject): readonly Decision[] {
  if (subject.about === 'layout') return layoutDecisions(subject);
  if (subject.about === 'cause') return causeDecisions(subject.text);
  if (subject.about === 'construction') return constructionDecisions(subject.texts);
  if (subject.about === 'column') return columnDecisions(subject);
  return recordDecisions(subject.day);
}

function layoutDecisions({
  maker,
  layouts,
  meanings,
}: Extract<Subject, { about: 'layout' }>): readonly Decision[] {
  const whose = maker === '' ? 'codes without a maker' : `codes of maker ${maker}`;
  return layouts.map((layout, index) => ({
    label: `Read ${whose} as ${layout}: ${meanings[index] || 'none of them fits'}`,
    change: { layouts: { [maker]: layout } },
  }));
}

function causeDecisions(text: string): readonly Decision[] {
  return CAUSES.map(([meaning, label]) => ({ label, change: { causes: { [text]: meaning } } }));
}

function constructionDecisions(texts: readonly string[]): readonly Decision[] {
  return (['AGM', 'flooded', 'gel'] as const).map((construction) => ({
    label: `They are ${construction}`,
    change: { constructions: Object.fromEntries(texts.map((text) => [text, construction])) },
  }));
}

function columnDecisions({ field, heads }: Extract<Subject, { about: 'column' }>): readonly Decision[] {
  const { label } = FIELD_SPECS[field];
  const named = heads.map((head) => ({
    label: `${head} is ${label}`,
    change: { columns: { [field]: head } },
  }));
  return [...named, { label: `No column is ${label}`, change: { columns: { [field]: '' } } }];
}

function recordDecisions(day: string): readonly Decision[] {
  return [
    { label: `Every removal since ${day} is on record`, change: { recordsSince: day } },
    { label: 'Removals were never written down completely', change: { recordsSince: 'never' } },
  ];
}
