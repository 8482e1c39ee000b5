import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';

// One row only, because a figure without a source is worse than none. The text of the 6T's specification was not seen;
// a published manual loads that battery with 550 A, half of this, which agrees with it.
const AMPS_OF_TYPE: ReadonlyMap<string, { readonly name: string; readonly amps: number }> = new Map([
  ['6TAGM', { name: '6T AGM', amps: 1_100 }],
]);

/**
 * Cold-cranking amperes that are asked of a NEW battery of a standard type, from the type's name. It is no limit for a
 * battery in use: multiply it, or the label, by the share that your organisation accepts. Other types: take the label.
 * @param type name of a standard type, such as 6T AGM; case and blanks don't matter
 * @returns current that a new battery of the type delivers for 30 s at -18 C to 7.2 V or more [A]
 * @problem notEnoughData  when no figure for the type is known here
 * @source commonPractice 1100 A for the 6T AGM
 * @source tm9-6115-730-24 loads the 6T AGM with 550 A, half its rating
 * @example specifiedAmps('6T AGM') // 1100
 */
export function specifiedAmps(type: string): Outcome<number> {
  const known = AMPS_OF_TYPE.get(type.replace(/\s+/g, '').toUpperCase());
  if (known !== undefined) return answer(known.amps);
  return problem('notEnoughData', 'typeNotKnown', 'type', type, { more: { known: knownTypes() } });
}

function knownTypes(): string {
  return [...AMPS_OF_TYPE.values()].map(({ name }) => `"${name}"`).join(', ');
}
