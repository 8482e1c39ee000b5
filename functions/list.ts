import type { Cell } from './cell.ts';

/** A cell function as every host gets it: its id in the namespace and what answers it. */
export type CellFunction = { readonly id: string; readonly run: (...given: any[]) => Cell[][] };

/** The namespace in which hosts show the functions. */
export const NAMESPACE = 'CRANK';

/** Every cell function, in the order of docs/functions.md. Excel and the built-in workbook both take this list. */
export const functions: readonly CellFunction[] = [
  // label
  // service
  // electrochemistry
  // cranking
  // storage
  // life
  // planning
];
