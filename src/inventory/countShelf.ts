import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';
import { problemText } from '../basics/problemText.ts';
import { labelScan } from '../label/labelScan.ts';
import { scannerFrame } from '../label/scannerFrame.ts';
import type { Battery } from '../service/battery.ts';
import { whereText } from './whereText.ts';

/** The shelf that is counted: a site, a storage place, or both; nothing = every battery in stock. */
export type Shelf = { readonly site?: string; readonly storagePlace?: string };

/** A battery that was scanned here and belongs elsewhere, with where the inventory has it. */
export type Misplaced = { readonly battery: Battery; readonly where: string };

/** A count of a shelf: what is there, what is not, and what should not be. */
export type ShelfCount = {
  readonly expected: number;
  /** Different batteries scanned, readable ones only. */
  readonly scanned: number;
  readonly found: readonly Battery[];
  readonly missing: readonly Battery[];
  /** In stock, and on another shelf by the inventory. */
  readonly wrongPlace: readonly Misplaced[];
  /** In a vehicle or removed by the inventory. */
  readonly elsewhere: readonly Misplaced[];
  /** Serials that the inventory does not have, as they were read. */
  readonly unknown: readonly string[];
  /** Serials that were scanned more than once. */
  readonly twice: readonly { readonly serial: string; readonly times: number }[];
  /** Scans that name no battery, with the reason. */
  readonly unreadable: readonly { readonly scanned: string; readonly why: string }[];
  /** What the scanner had put around its texts, spelled, each once. */
  readonly takenOff: readonly string[];
};

/**
 * A count of a shelf from what was scanned or typed there, against the inventory. A scan is a serial, or the text of a
 * label's symbol that holds one; capital letters, blanks around it and the order don't matter. Two batteries of one serial
 * are told apart by the maker that the symbol names, or else by the number of scans.
 * @param scans      scanned texts, one a battery; empty ones are passed over
 * @param batteries  all of the inventory, so that a stranger can be told from one that belongs elsewhere
 * @param shelf      site, storage place, both or neither
 * @returns found, missing, in the wrong place, elsewhere, unknown, scanned twice, unreadable
 * @problem missing   when nothing was scanned, or no battery is in stock
 * @problem badInput  when the inventory has no battery in stock at that site or place
 */
export function countShelf(
  scans: readonly string[],
  batteries: readonly Battery[],
  shelf: Shelf = {},
): Outcome<ShelfCount> {
  const filled = scans.map((scan) => scan.trim()).filter((scan) => scan !== '');
  if (filled.length === 0) return problem('missing', 'nothingScanned', 'scans');
  const stock = batteries.filter(({ whereabouts }) => whereabouts === 'inStock');
  if (stock.length === 0) return problem('missing', 'nothingInStock', 'batteries');
  const expected = stock.filter((battery) => isAt(battery, shelf));
  if (expected.length === 0) return noSuchShelf(stock, shelf);
  return answer(counted(readScans(filled, batteries), batteries, expected));
}

const same = (one: string): string => one.trim().toUpperCase();

const isAt = ({ site, storagePlace = '' }: Battery, shelf: Shelf): boolean =>
  (shelf.site === undefined || same(site) === same(shelf.site)) &&
  (shelf.storagePlace === undefined || same(storagePlace) === same(shelf.storagePlace));

const PLACES_NAMED = 12;

function noSuchShelf(stock: readonly Battery[], shelf: Shelf): Outcome<never> {
  const placed = stock.map(({ site, storagePlace }) => [site, storagePlace].filter(Boolean).join(', '));
  const known = [...new Set(placed)].filter((place) => place !== '').sort();
  const more = known.length > PLACES_NAMED ? ` and ${known.length - PLACES_NAMED} more` : '';
  const given = [shelf.site, shelf.storagePlace].filter(Boolean).join(', ');
  return problem('badInput', 'noSuchShelf', 'shelf', given, {
    more: { known: known.slice(0, PLACES_NAMED).join('; ') + more },
  });
}

type Read = { readonly serial: string; readonly maker?: string };
type Reads = { readonly reads: readonly Read[] } & Pick<ShelfCount, 'unreadable' | 'takenOff'>;

function readScans(scans: readonly string[], batteries: readonly Battery[]): Reads {
  const serials = new Set(batteries.map(({ serial }) => same(serial)));
  const reads: Read[] = [];
  const unreadable: { scanned: string; why: string }[] = [];
  const frames = new Set<string>();
  for (const scanned of scans) {
    const { bare, takenOff } = scannerFrame(scanned);
    // A serial may look like a date code or a stock number; where the inventory has it, it is that serial.
    const serial = [scanned, bare].map(same).find((text) => serials.has(text));
    if (takenOff !== '') frames.add(takenOff);
    if (serial !== undefined) reads.push({ serial });
    else {
      const label = labelScan(scanned);
      if (!label.ok) unreadable.push({ scanned, why: problemText(label.problem) });
      else if (label.value.serial === undefined)
        unreadable.push({ scanned, why: noSerial(label.value.readAs) });
      else reads.push({ serial: same(label.value.serial), maker: label.value.maker });
    }
  }
  return { reads, unreadable, takenOff: [...frames] };
}

const noSerial = (readAs: string): string => `read as ${readAs}, which holds no serial`;

function counted(
  { reads, unreadable, takenOff }: Reads,
  batteries: readonly Battery[],
  expected: readonly Battery[],
): ShelfCount {
  const here = new Set(expected);
  const bySerial = grouped(batteries, here);
  const seen = new Set<Battery>();
  const unknown = new Set<string>();
  const again = new Map<string, number>();
  for (const read of reads) {
    const candidates = candidatesFor(read, bySerial);
    const battery = candidates.find(
      (each) => !seen.has(each) && (here.has(each) || !someSeen(candidates, seen)),
    );
    if (battery !== undefined) seen.add(battery);
    else if (candidates.length > 0 || unknown.has(read.serial))
      again.set(read.serial, (again.get(read.serial) ?? 1) + 1);
    else unknown.add(read.serial);
  }
  const strangers = [...seen].filter((battery) => !here.has(battery));
  const told = (isStock: boolean): Misplaced[] =>
    strangers
      .filter(({ whereabouts }) => (whereabouts === 'inStock') === isStock)
      .map((battery) => ({ battery, where: whereText(battery) }));
  return {
    expected: expected.length,
    scanned: seen.size + unknown.size,
    found: expected.filter((battery) => seen.has(battery)),
    missing: expected.filter((battery) => !seen.has(battery)),
    wrongPlace: told(true),
    elsewhere: told(false),
    unknown: [...unknown],
    twice: [...again].map(([serial, times]) => ({ serial, times })),
    unreadable,
    takenOff,
  };
}

const someSeen = (candidates: readonly Battery[], seen: ReadonlySet<Battery>): boolean =>
  candidates.some((each) => seen.has(each));

// The most likely one first: expected here, then in stock, then in a vehicle, then removed.
function grouped(
  batteries: readonly Battery[],
  here: ReadonlySet<Battery>,
): ReadonlyMap<string, readonly Battery[]> {
  const rank = (battery: Battery): number =>
    here.has(battery) ? 0 : { inStock: 1, inService: 2, removed: 3 }[battery.whereabouts];
  const groups = new Map<string, Battery[]>();
  for (const battery of batteries) {
    const key = same(battery.serial);
    if (key !== '') groups.set(key, [...(groups.get(key) ?? []), battery]);
  }
  for (const group of groups.values()) group.sort((a, b) => rank(a) - rank(b));
  return groups;
}

function candidatesFor(
  { serial, maker }: Read,
  bySerial: ReadonlyMap<string, readonly Battery[]>,
): readonly Battery[] {
  const all = bySerial.get(serial) ?? [];
  return maker === undefined
    ? all
    : all.filter((each) => each.maker === '' || same(each.maker) === same(maker));
}
