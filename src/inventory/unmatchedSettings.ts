import { FIELD_SPECS } from './fields.ts';
import type { Field } from './fields.ts';
import type { Inventory } from './inventory.ts';
import type { GivenSettings, Settings } from './settings.ts';

/** A setting that names what an inventory does not have. */
export type Unmatched = { readonly setting: string; readonly name: string; readonly what: string };

/** What an inventory knows by name. */
export type KnownNames = Pick<Inventory, 'causes' | 'constructions' | 'layouts'> & {
  readonly sites: readonly string[];
};

/**
 * Settings of another month that no longer match: sites, makers, removal causes and types that the inventory does not
 * have. They are kept, for the next file may have them again.
 * @param settings  settings that were taken
 * @param known  what the inventory has
 * @returns what does not match, in words
 * @example unmatchedSettings({ ...DEFAULT_SETTINGS, causes: { shot: 'good' } }, { causes: [], constructions: [], layouts: {}, sites: [] })[0].name // "shot"
 */
export function unmatchedSettings(settings: Settings, known: KnownNames): readonly Unmatched[] {
  const makers = Object.keys(known.layouts);
  const causes = known.causes.map(({ text }) => text.toLowerCase());
  const texts = known.constructions.map(({ text }) => text);
  const list = (
    setting: 'sites' | 'layouts' | 'causes' | 'constructions',
    what: string,
    isKnown: (name: string) => boolean,
  ): Unmatched[] =>
    Object.keys(settings[setting])
      .filter((name) => !isKnown(name))
      .map((name) => ({ setting, name, what }));
  return [
    ...list('sites', 'site', (name) => known.sites.includes(name)),
    ...list('layouts', 'maker', (name) => name === '*' || makers.includes(name)),
    ...list('causes', 'removal cause', (name) => causes.includes(name.trim().toLowerCase())),
    ...list('constructions', 'construction text', (name) => texts.includes(name)),
  ];
}

/** The settings without the column of one field, and that column as what does not match. */
export function withoutColumn(
  given: GivenSettings,
  field: Field,
): { readonly given: GivenSettings; readonly unmatched: Unmatched } {
  const { [field]: head = '', ...columns } = given.columns ?? {};
  return {
    given: { ...given, columns },
    unmatched: { setting: 'columns', name: head, what: `column for ${FIELD_SPECS[field].label}` },
  };
}
