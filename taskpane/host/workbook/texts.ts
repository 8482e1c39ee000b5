import type { ArrayValueObject, BaseValueObject } from '@univerjs/engine-formula';
import type { Engine, FunctionClass, NamedClass } from './functions.ts';

/** Functions of the sheet that hand on or look up what they are given: a text typed into them stays a text. */
const HAND_ON = [
  [
    'IF',
    'IFERROR',
    'IFNA',
    'IFS',
    'SWITCH',
    'CHOOSE',
    'VSTACK',
    'HSTACK',
    'TOCOL',
    'TOROW',
    'WRAPROWS',
    'WRAPCOLS',
  ],
  ['INDEX', 'FILTER', 'SORT', 'UNIQUE', 'TAKE', 'DROP', 'EXPAND', 'LOOKUP', 'VLOOKUP', 'HLOOKUP', 'XLOOKUP'],
  [
    'MATCH',
    'XMATCH',
    'CONCAT',
    'CONCATENATE',
    'TEXTJOIN',
    'TEXTSPLIT',
    'TEXTBEFORE',
    'TEXTAFTER',
    'LEFT',
    'RIGHT',
  ],
  [
    'MID',
    'LEN',
    'TRIM',
    'CLEAN',
    'UPPER',
    'LOWER',
    'PROPER',
    'SUBSTITUTE',
    'REPLACE',
    'REPT',
    'FIND',
    'SEARCH',
  ],
  ['EXACT', 'ISTEXT', 'ISNUMBER', 'ISNONTEXT', 'TYPE'],
].flat();

/** Functions that make a character of its number. */
const CHARACTER = ['CHAR', 'UNICHAR'];

/**
 * Functions of the sheet that take the place of the engine's own. Those turn "1E234" and "03/04/2026" into numbers
 * before they hand them on, and CHAR(28) and CHAR(29), which part the fields of a label's symbol, into another character.
 */
export function textFunctions(engine: Engine): NamedClass[] {
  return engine.ALL_IMPLEMENTED_FUNCTIONS.flatMap(([own, name]): NamedClass[] => {
    const Own = own as FunctionClass;
    if (HAND_ON.includes(String(name))) return [[handingOn(Own), String(name)]];
    return CHARACTER.includes(String(name)) ? [[makingCharacters(engine, Own), String(name)]] : [];
  });
}

const handingOn = (Own: FunctionClass): FunctionClass =>
  class extends Own {
    override isArgumentsIgnoreNumberPattern(): boolean {
      return true;
    }
  };

function makingCharacters(engine: Engine, Own: FunctionClass): FunctionClass {
  return class extends Own {
    override calculate(number: BaseValueObject): BaseValueObject {
      if (number.isArray()) return (number as ArrayValueObject).mapValue((each) => this.calculate(each));
      const made = super.calculate(number) as BaseValueObject;
      const code = Math.floor(Number(number.getValue()));
      const replaced = made.getValue() === '\u0001' && code > 1;
      return replaced ? engine.StringValueObject.create(String.fromCodePoint(code)) : made;
    }
  };
}
