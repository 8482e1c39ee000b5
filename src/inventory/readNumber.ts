import { celsiusFromFahrenheit } from '../basics/units.ts';
import { isBlank, isError, isPlaceholder } from './cells.ts';
import type { FindingKind } from './findingKinds.ts';
import type { Cell } from './inventory.ts';

/** A number as read from a cell, with what was odd about it; no value = the cell counts as empty. */
export type NumberReading = {
  readonly value?: number;
  readonly quirk?: FindingKind;
  /** True where the cell itself says Fahrenheit and the value was converted to Celsius. */
  readonly fahrenheit?: boolean;
  /** True where the cell itself says Celsius. */
  readonly celsius?: boolean;
};

const EMPTY: NumberReading = {};
const UNREADABLE: NumberReading = { quirk: 'unreadable number' };
const PLACEHOLDER: NumberReading = { quirk: 'placeholder' };

const NUMBER_WITH_UNIT =
  /^([-+−]?[\d.,' ]*\d)\s*(°?\s*[a-z%€$£°]*\.?)(?:\s*\(?(?:en|din|iec|sae|cca|mca|ca)\)?)?$/i;
const SCIENTIFIC = /^[-+]?\d+(\.\d+)?e[-+]?\d+$/i;
const UNITS = new Set(
  'v,volt,volts,vdc,a,amp,amps,ampere,amperes,cca,ca,mca,en,din,iec,sae,c,°c,° c,degc,f,°f,° f,degf,°,eur,usd,gbp,€,$,£'.split(
    ',',
  ),
);

/** The number that a cell holds: as it is, or as text with a unit, a decimal comma or separated thousands. */
export function readNumber(cell: Cell): NumberReading {
  if (typeof cell === 'number') return cell === 9999 || cell === -9999 ? PLACEHOLDER : { value: cell };
  if (isBlank(cell)) return EMPTY;
  if (isError(cell)) return { quirk: 'error in the cell' };
  if (typeof cell !== 'string') return UNREADABLE;
  return isPlaceholder(cell) ? PLACEHOLDER : numberText(cell.replaceAll('\u00a0', ' ').trim());
}

function numberText(text: string): NumberReading {
  if (SCIENTIFIC.test(text)) return { value: Number(text), quirk: 'number stored as text' };
  const parts = NUMBER_WITH_UNIT.exec(text);
  if (parts === null) return UNREADABLE;
  const unit = parts[2]!.toLowerCase().replace(/\.$/, '');
  if (unit !== '' && !UNITS.has(unit)) return UNREADABLE;
  const figure = figureOf(parts[1]!.replaceAll('−', '-'));
  if (figure === undefined) return UNREADABLE;
  const { value, comma } = figure;
  const withUnit = unit !== '' || parts[0]!.length > parts[1]!.length + parts[2]!.length + 1;
  const quirk = comma ? 'decimal comma' : withUnit ? 'number with its unit' : 'number stored as text';
  if (/f$/.test(unit)) return { value: celsiusFromFahrenheit(value), quirk, fahrenheit: true };
  return /c$/.test(unit) && unit.length <= 4 ? { value, quirk, celsius: true } : { value, quirk };
}

type Figure = { readonly value: number; readonly comma: boolean };

// 1,100 and 1 100 and 1'100 are thousands; 12,6 is a decimal comma; 12,650 is one too, for no thousand starts with
// a battery's volts: a comma before three digits parts thousands only where the whole is 1,000 to 9,999.
function figureOf(text: string): Figure | undefined {
  const plain = text.replace(/(\d)[' ](?=\d{3}(\D|$))/g, '$1');
  if (/^[-+]?\d+(\.\d+)?$/.test(plain)) return { value: Number(plain), comma: false };
  if (/^[-+]?[1-9],\d{3}(\.\d+)?$/.test(plain))
    return { value: Number(plain.replace(',', '')), comma: false };
  if (/^[-+]?\d+,\d+$/.test(plain)) return { value: Number(plain.replace(',', '.')), comma: true };
  if (/^[-+]?\d{1,3}(\.\d{3})+,\d+$/.test(plain))
    return { value: Number(plain.replaceAll('.', '').replace(',', '.')), comma: true };
  return undefined;
}
