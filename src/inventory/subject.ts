import type { Field } from './fields.ts';

/** What findings of one cause are about, where one decision can settle them all. */
export type Subject =
  /** A maker's codes and the layouts in question, the one in use first, each with what a code means in it ("" = none fits). */
  | {
      readonly about: 'layout';
      readonly maker: string;
      readonly layouts: readonly string[];
      readonly meanings: readonly string[];
    }
  | { readonly about: 'cause'; readonly text: string }
  | { readonly about: 'construction'; readonly texts: readonly string[] }
  /** A field and the heads in question, the one in use first. */
  | { readonly about: 'column'; readonly field: Field; readonly heads: readonly string[] }
  /** The month that is taken as the beginning of the records, such as 2021-04-01. */
  | { readonly about: 'records'; readonly day: string };
