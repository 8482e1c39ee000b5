import type { Day } from '../basics/calendar.ts';
import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';
import type { ElementRole, LabelElement } from './labelElement.ts';
import { elementName } from './labelElement.ts';
import { makerCode } from './makerCode.ts';
import { stockNumber } from './stockNumber.ts';
import type { SymbolDate } from './symbolDate.ts';
import { symbolDate } from './symbolDate.ts';
import { uniqueItemId } from './uniqueItemId.ts';

/** The fields of a label that can be asked for by name. */
export const LABEL_FIELDS = ['serial', 'part', 'maker', 'lot', 'made', 'stock', 'uii'] as const;
export type LabelField = (typeof LABEL_FIELDS)[number];

/** What a label says. A field that it lacks is not there. */
export type LabelContent = {
  readonly [Field in Exclude<LabelField, 'made'>]?: string;
} & {
  /** First day of the date of manufacture, and how long a time it names. */
  readonly made?: Day;
  readonly madeTo?: SymbolDate['to'];
  /** Whatever else it says, by name. */
  readonly others: readonly (readonly [name: string, value: string | Day])[];
};

const STOCK_NUMBER_LENGTH = 13;
const MAKER_LENGTH = 5;

type Read = { readonly element: LabelElement; readonly value: string; readonly date?: SymbolDate };

/**
 * What the elements of a symbol say together, each checked: maker codes, stock numbers, dates, shapes, and the
 * unique item id that they make.
 * @param elements  fields of the symbol, in its order
 * @problem badInput  when a field is malformed, stands twice with different characters, or a serial makes no id
 */
export function labelContent(elements: readonly LabelElement[]): Outcome<LabelContent> {
  const reads: Read[] = [];
  for (const element of elements) {
    const read = readElement(element, elements);
    if (!read.ok) return read;
    reads.push(read.value);
  }
  const uii = uniqueItemId(elements);
  return uii.ok ? answer(together(reads, uii.value)) : uii;
}

function readElement(element: LabelElement, all: readonly LabelElement[]): Outcome<Read> {
  const { key, value, meaning } = element;
  const other = all.find((each) => each.key === key && each.value !== value);
  if (other !== undefined) {
    return problem('badInput', 'fieldTwice', elementName(element), value, { more: { other: other.value } });
  }
  if (meaning.shape?.test(value) === false)
    return problem('badInput', 'fieldShape', elementName(element), value);
  if (meaning.date !== undefined) {
    const date = symbolDate(value, meaning.date, elementName(element));
    return date.ok ? answer({ element, value, date: date.value }) : date;
  }
  const checked = checkOf(meaning.role, value);
  if (checked.ok) return answer({ element, value: checked.value });
  return { ok: false, problem: { ...checked.problem, argument: elementName(element) } };
}

function checkOf(role: ElementRole | undefined, value: string): Outcome<string> {
  if (role === 'maker') return makerCode(value);
  if (role === 'stock') return stockNumber(value.slice(0, STOCK_NUMBER_LENGTH));
  if (role !== 'makerAndSerial') return answer(value);
  const maker = makerCode(value.slice(0, MAKER_LENGTH));
  return maker.ok ? answer(value) : maker;
}

// Every field is shown once: by its name where it is the first of its role, else among the others.
function together(reads: readonly Read[], uii: string | undefined): LabelContent {
  const used = new Set<Read | undefined>();
  const first = (...roles: readonly ElementRole[]): string | undefined => {
    const read = reads.find(({ element }) => roles.includes(element.meaning.role!));
    used.add(read);
    return read?.value;
  };
  const joined = first('makerAndSerial');
  const made = madeOf(reads);
  used.add(made);
  return {
    serial: first('serialOfPart', 'serialOfMaker', 'serial') ?? joined?.slice(MAKER_LENGTH),
    part: first('part'),
    maker: first('maker') ?? joined?.slice(0, MAKER_LENGTH),
    lot: first('lot'),
    made: made?.date?.day,
    madeTo: made?.date?.to,
    stock: first('stock'),
    uii: first('uii') ?? uii,
    others: reads.flatMap((read) => otherOf(read, used.has(read))),
  };
}

// A date of manufacture goes first; else the one other date that the symbol holds; of several none is guessed.
function madeOf(reads: readonly Read[]): Read | undefined {
  const sure = reads.filter(({ element }) => element.meaning.role === 'made');
  const dates = sure.length > 0 ? sure : reads.filter(({ element }) => element.meaning.role === 'date');
  return new Set(dates.map(({ date }) => date?.day)).size === 1 ? dates[0] : undefined;
}

function otherOf(
  { element, value, date }: Read,
  shown: boolean,
): readonly (readonly [string, string | Day])[] {
  if (element.meaning.role === 'stock') return stockParts(element.value, value);
  return shown ? [] : [[element.meaning.name, date?.day ?? value]];
}

/** Class and codification bureau of a stock number, and what stands behind it in the field. */
export function stockParts(field: string, stock: string): readonly (readonly [string, string])[] {
  const behind = field.replace(/[^0-9A-Z]/gi, '').slice(STOCK_NUMBER_LENGTH);
  const parts: (readonly [string, string])[] = [
    ['class', stock.slice(0, 4)],
    ['codification bureau', stock.slice(5, 7)],
  ];
  return behind === '' ? parts : [...parts, ['behind the stock number', behind]];
}
