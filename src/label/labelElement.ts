import type { SymbolDateLayout } from './symbolDate.ts';

/** What a field of a symbol is for, where it is for more than to be shown. */
export type ElementRole =
  | ('maker' | 'enterprise' | 'part' | 'lot' | 'stock' | 'uii')
  // A serial that is one of a part or lot, of a maker, behind the maker's code in one field, or by itself.
  | ('serialOfPart' | 'serialOfMaker' | 'makerAndSerial' | 'serial')
  // The date of manufacture, and a date that may be it.
  | ('made' | 'date');

/** What a key (data identifier, text element or application identifier) says about the characters behind it. */
export type ElementMeaning = {
  readonly name: string;
  readonly role?: ElementRole;
  /** How the date is written, where it is one. */
  readonly date?: SymbolDateLayout;
  /** Issuing agency that goes before an enterprise in a unique item id. */
  readonly agency?: string;
  /** What the characters must be. */
  readonly shape?: RegExp;
};

/** One field of a symbol: its key as it stands there, the characters behind the key, and what the key means. */
export type LabelElement = {
  readonly key: string;
  readonly value: string;
  readonly meaning: ElementMeaning;
};

/** What a field is called in a sentence. */
export function elementName({ key, meaning }: LabelElement): string {
  return `${meaning.name} (${key})`;
}
