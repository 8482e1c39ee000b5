import { isoDay } from '../basics/calendar.ts';
import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer, problem } from '../basics/outcome.ts';
import type { LabelScan } from '../label/labelScan.ts';
import { labelScan } from '../label/labelScan.ts';
import { scannerFrame } from '../label/scannerFrame.ts';
import type { Battery } from '../service/battery.ts';

/** What a typed or scanned text says about the battery on the bench. */
export type BenchIdentity = {
  readonly serial: string;
  /** The battery of the inventory that has this serial; undefined = none has, or several have and nothing tells them apart. */
  readonly battery?: Battery;
  /** Rows of the inventory that have this serial. */
  readonly rows: readonly number[];
  /** What the symbol says, where it was one. */
  readonly label?: LabelScan;
  /** What the scanner had put around the text, spelled; left out where it had not. */
  readonly takenOff?: string;
  /** What label and inventory say differently, in sentences; what agrees is not told. */
  readonly differences: readonly string[];
};

/**
 * The battery that a text from keyboard or scanner names: a serial of the inventory, or the text of a label's symbol.
 * Where several batteries share a serial the label's maker decides, else the one in service, if there is one.
 * @param text       serial, or text of a symbol
 * @param batteries  of the inventory
 * @returns serial, battery, rows, label, and where label and inventory differ
 * @problem missing   when the text is empty, or the symbol names no serial
 * @problem badInput  as labelScan, for a text that is no serial of the inventory
 */
export function benchBattery(text: string, batteries: readonly Battery[]): Outcome<BenchIdentity> {
  const typed = text.trim();
  if (typed === '') return problem('missing', 'missing', 'serial');
  const knows = (text: string): boolean => batteries.some(({ serial }) => isSame(serial, text));
  if (knows(typed)) return answer(identity(typed, batteries));
  const { bare, takenOff } = scannerFrame(typed);
  // Whatever a scanner puts around it, and whatever else it may look like: the inventory has this serial.
  if (takenOff !== '' && knows(bare)) return answer({ ...identity(bare, batteries), takenOff });
  return andThen(labelScan(typed), (label) =>
    label.serial === undefined
      ? problem('missing', 'labelWithoutSerial', 'symbol', typed)
      : answer({ ...identity(label.serial, batteries, label), ...(takenOff !== '' && { takenOff }) }),
  );
}

const isSame = (one: string, other: string): boolean => one.toUpperCase() === other.toUpperCase();

function identity(serial: string, batteries: readonly Battery[], label?: LabelScan): BenchIdentity {
  const all = batteries.filter((battery) => isSame(battery.serial, serial));
  const battery = oneOf(all, label);
  return {
    serial: battery?.serial ?? serial,
    ...(battery !== undefined && { battery }),
    rows: all.map(({ row }) => row),
    ...(label !== undefined && { label }),
    differences: label === undefined || battery === undefined ? [] : differencesOf(label, battery),
  };
}

function oneOf(all: readonly Battery[], label: LabelScan | undefined): Battery | undefined {
  if (all.length < 2) return all[0];
  const ofMaker = all.filter(({ maker }) => label?.maker !== undefined && isSame(maker, label.maker));
  if (ofMaker.length === 1) return ofMaker[0];
  const inService = all.filter(({ whereabouts }) => whereabouts === 'inService');
  return inService.length === 1 ? inService[0] : undefined;
}

function differencesOf(label: LabelScan, battery: Battery): string[] {
  const pairs = [
    ['maker', label.maker, battery.maker],
    ['stock number', label.stock, battery.stockNumber],
    ['lot', label.lot, battery.lot],
    ['month made', monthOf(label.made), monthOf(battery.made)],
  ] as const;
  return pairs.flatMap(([what, onLabel = '', onSheet = '']) =>
    onLabel === '' || onSheet === '' || isSame(figures(onLabel), figures(onSheet))
      ? []
      : [`${what}: the label says ${onLabel}, the inventory says ${onSheet}`],
  );
}

const monthOf = (day: number | undefined): string | undefined =>
  day === undefined ? undefined : isoDay(day).slice(0, 7);

/** Dashes and spaces are a matter of how a number is written. */
const figures = (text: string): string => text.replace(/[-\s]/g, '');
