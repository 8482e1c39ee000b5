import type { Cause } from './fleet.ts';

type Word = { readonly word: string; readonly weight: number };

const words = (...pairs: readonly (readonly [string, number])[]): readonly Word[] =>
  pairs.map(([word, weight]) => ({ word, weight }));

/** How clerks write why a battery came off, by what really happened. */
export const CAUSES: Record<Cause, readonly Word[]> = {
  failed: words(
    ['failed', 20],
    ['Failed load test', 16],
    ['FAILED', 9],
    ['would not hold charge', 14],
    ['wont hold charge', 6],
    ['low CCA after recharge', 10],
    ['dead cell', 8],
    ['failed test twice', 8],
    ['U/S - failed', 5],
    ['test fail', 4],
  ),
  wholeSet: words(
    ['whole set renewed', 12],
    ['set renewed', 6],
    ['mate failed, set changed', 5],
    ['Mate renewed', 3],
  ),
  planned: words(['planned change', 8], ['planned swap before winter', 4], ['Planned', 2]),
  vehicleGone: words(
    ['vehicle sold', 6],
    ['veh disposed', 4],
    ['vehicle gone', 4],
    ['Vehicle written off', 2],
  ),
  stolen: words(['stolen', 5], ['Stolen from yard', 2], ['theft', 1]),
  accident: words(['accident', 5], ['vehicle accident', 2]),
  damaged: words(['case cracked', 4], ['damaged post', 3], ['frozen and split', 2], ['DAMAGED', 2]),
};

/** Reasons that say nothing. */
export const NOT_SAID: readonly string[] = ['', 'see log', '?', 'exchanged', 'removed'];

/** Words for a battery in a vehicle. */
export const FITTED_WORDS = words(
  ['in use', 60],
  ['In use', 10],
  ['in service', 14],
  ['fitted', 8],
  ['IN USE', 4],
);
/** Words for a battery that was taken off. */
export const GONE_WORDS = words(['removed', 40], ['off', 10], ['scrapped', 16], ['Removed', 8], ['', 6]);
/** Words for a battery on a shelf. */
export const STORED_WORDS = words(['in stock', 10], ['stock', 8], ['spare', 3], ['In store', 3]);
