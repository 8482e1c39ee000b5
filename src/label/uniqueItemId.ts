import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';
import type { ElementRole, LabelElement } from './labelElement.ts';
import { elementName } from './labelElement.ts';

/** Agency that gave out maker codes, before a maker code in a unique item id. */
const MAKER_AGENCY = 'D';
/** Longest unique item id, from memory. */
const LONGEST = 50;
const ALLOWED = /^[0-9A-Z/-]+$/;
const PARTS_OF_IT: readonly (ElementRole | undefined)[] = [
  ...(['maker', 'enterprise', 'part', 'lot', 'uii'] as const),
  ...(['serialOfPart', 'serialOfMaker', 'makerAndSerial'] as const),
];

type Found = (role: ElementRole) => LabelElement | undefined;

/**
 * Unique item identifier (UII) of a symbol's elements: as it stands there; or the agency, the enterprise and a serial
 * that is unique in it; or with the part, or else the lot, between them where the serial is unique in those only.
 * @param elements  fields of the symbol
 * @returns the identifier, or undefined where the symbol holds no serial of such a kind
 * @problem badInput  when a serial stands without what makes it unique, a character can't stand there, or it is
 *   longer than 50
 * @source milStd130n table A-II
 */
export function uniqueItemId(elements: readonly LabelElement[]): Outcome<string | undefined> {
  const found: Found = (role) => elements.find(({ meaning }) => meaning.role === role);
  const id = built(found);
  if (!id.ok || id.value === undefined) return id;
  if (!ALLOWED.test(id.value)) return oddCharacters(elements, id.value);
  if (id.value.length <= LONGEST) return id;
  return problem('badInput', 'uniqueIdLength', 'unique item id', id.value, { more: { most: LONGEST } });
}

function oddCharacters(elements: readonly LabelElement[], id: string): Outcome<never> {
  const odd = elements.find(
    ({ meaning, value }) => PARTS_OF_IT.includes(meaning.role) && !ALLOWED.test(value),
  );
  const name = odd === undefined ? 'unique item id' : elementName(odd);
  return problem('badInput', 'uniqueIdCharacters', name, odd?.value ?? id);
}

function built(found: Found): Outcome<string | undefined> {
  const whole = found('uii')?.value;
  if (whole !== undefined) return answer(whole);
  const makerAndSerial = found('makerAndSerial')?.value;
  if (makerAndSerial !== undefined) return answer(MAKER_AGENCY + makerAndSerial);
  const [ofMaker, ofPart] = [found('serialOfMaker'), found('serialOfPart')];
  if (ofMaker !== undefined) return joined(ofMaker, enterpriseOf(found), '');
  if (ofPart === undefined) return answer(undefined);
  return joined(ofPart, enterpriseOf(found), (found('part') ?? found('lot'))?.value);
}

function enterpriseOf(found: Found): string | undefined {
  const maker = found('maker')?.value;
  if (maker !== undefined) return MAKER_AGENCY + maker;
  const enterprise = found('enterprise');
  return enterprise === undefined ? undefined : (enterprise.meaning.agency ?? '') + enterprise.value;
}

function joined(serial: LabelElement, enterprise?: string, within?: string): Outcome<string> {
  if (enterprise !== undefined && within !== undefined) return answer(enterprise + within + serial.value);
  const lacking = [
    ...(enterprise === undefined ? ['a maker'] : []),
    ...(within === undefined ? ['a part or lot'] : []),
  ];
  return problem('badInput', 'noUniqueId', elementName(serial), serial.value, {
    more: { lacking: lacking.join(' and ') },
  });
}
