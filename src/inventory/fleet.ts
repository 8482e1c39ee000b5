import type { Battery, Life, Whereabouts } from '../service/battery.ts';
import { problemText } from '../basics/problemText.ts';
import { removalCausesOf } from './causeFindings.ts';
import { chargeByOf, conditionOf } from './condition.ts';
import type { Constructions } from './constructionColumn.ts';
import { constructionColumn } from './constructionColumn.ts';
import type { Dates } from './dateFindings.ts';
import { checkedDates } from './dateFindings.ts';
import type { Field } from './fields.ts';
import type { Findings } from './findings.ts';
import type { Finding, RecordStart, RemovalCause, RowCounts } from './inventory.ts';
import type { Lines } from './lines.ts';
import type { LifeJob, Service } from './lives.ts';
import { ageOn, lifeOf, serviceOf } from './lives.ts';
import type { Chain } from './oneBattery.ts';
import { chainsOf } from './oneBattery.ts';
import type { NamedPlaces, Place } from './frost.ts';
import { placeOf } from './frost.ts';
import { checkPlace } from './placeFindings.ts';
import type { MadeColumn } from './readCodes.ts';
import { readMade } from './readCodes.ts';
import type { InventoryRequest } from './readInventory.ts';
import type { ReadingsJob } from './readings.ts';
import { latestReadings } from './readings.ts';
import { recordStartOf } from './recordFindings.ts';
import { checkSets } from './setFindings.ts';
import type { Records } from './testRecords.ts';
import { readRecords } from './testRecords.ts';
import { testTrendOf } from './testTrend.ts';
import { whereabouts } from './whereabouts.ts';
import { checkAges, fillInstalled, reportAgeUnknown } from './ageFindings.ts';

/** The batteries and lives of a sheet, with what was found on the way. */
export type Fleet = {
  readonly batteries: readonly Battery[];
  readonly lives: readonly Life[];
  readonly counts: Pick<RowCounts, 'used' | 'repaired' | 'ageUnknown'>;
  /** Rows that say a life a second time. */
  readonly twice: number;
  readonly causes: readonly RemovalCause[];
  readonly recordStart: RecordStart;
  readonly layouts: Readonly<Record<string, string>>;
  readonly layoutMeanings: Readonly<Record<string, string>>;
  readonly constructions: Constructions['texts'];
  /** Findings in the sheets of tests and charges. */
  readonly otherFindings: readonly Finding[];
  readonly notes: readonly string[];
};

type Parts = {
  readonly request: InventoryRequest;
  readonly lines: Lines;
  readonly sites: readonly string[];
  readonly made: MadeColumn;
  readonly dates: Dates;
  readonly where: readonly Whereabouts[];
  readonly parked: Uint8Array;
  readonly constructions: Constructions;
  readonly lifeJob: LifeJob;
  readonly readingsJob: ReadingsJob;
};

/** The batteries and lives that the rows of a sheet tell. */
export function fleetOf(
  request: InventoryRequest,
  lines: Lines,
  sites: readonly string[],
  findings: Findings,
): Fleet {
  const { asOf, settings } = request;
  const made = readMade(lines, { asOf, findings, layouts: settings.layouts });
  const dates = checkedDates(lines, made, asOf, findings);
  const { where, parked } = whereabouts(lines, dates, findings);
  const { chains, twice } = chainsOf({ lines, dates, where, asOf, findings });
  fillInstalled(chains, { lines, dates, where, findings });
  const records = recordsOf(request, lines);
  const start = recordStartOf(lines, dates, where, settings.recordsSince, findings);
  const causes = removalCausesOf(lines, where, settings.causes, findings);
  const lifeJob = {
    lines,
    dates,
    where,
    start,
    asOf,
    findings,
    lots: made.lots,
    sites,
    meaningOf: causes.meaningOf,
  };
  const readingsJob = { lines, dates, where, ...records, asOf, testMonths: settings.testMonths, findings };
  const isJudged = request.tests !== undefined || lines.at.has('restVolts') || lines.at.has('reading');
  const constructions = constructionColumn(lines, settings.constructions, isJudged, findings);
  const parts = { request, lines, sites, made, dates, where, parked, constructions, lifeJob, readingsJob };
  const { batteries, lives, ageUnknown } = batteriesOf(chains, parts);
  checkSets(batteries, lines, findings);
  return {
    ...{
      batteries,
      lives,
      causes: causes.list,
      recordStart: start,
      layouts: made.layouts,
      layoutMeanings: made.layoutMeanings,
      constructions: constructions.texts,
      twice: twice.length,
    },
    counts: countsOf(lines, ageUnknown, new Set(twice), findings),
    otherFindings: [records.tests, records.charges].flatMap((one) => one?.findings.list ?? []),
    notes: records.notes,
  };
}

type RecordSheets = {
  readonly tests: Records | undefined;
  readonly charges: Records | undefined;
  readonly notes: readonly string[];
};

function recordsOf({ tests, charges, asOf, settings }: InventoryRequest, lines: Lines): RecordSheets {
  const serials = new Set(lines.text('serial'));
  const notes: string[] = [];
  const read = (
    sheet: InventoryRequest['tests'],
    dateField: 'testedOn' | 'chargedOn',
  ): Records | undefined => {
    if (sheet === undefined) return undefined;
    const knows = (serial: string): boolean => serials.has(serial);
    const { temperatureUnit, dateOrder } = settings;
    const records = readRecords(sheet, { asOf, dateField, temperatureUnit, dateOrder, knows });
    if (records.ok) return records.value;
    notes.push(`the sheet ${sheet.name ?? dateField} was not read: ${problemText(records.problem)}`);
    return undefined;
  };
  return { tests: read(tests, 'testedOn'), charges: read(charges, 'chargedOn'), notes };
}

type Batteries = {
  readonly batteries: Battery[];
  readonly lives: Life[];
  readonly ageUnknown: ReadonlySet<number>;
};

function batteriesOf(chains: readonly Chain[], parts: Parts): Batteries {
  const [batteries, lives] = [[] as Battery[], [] as Life[]];
  const ageUnknown = new Set<number>();
  const isParked = parkedLookup(parts);
  const placeJob = { ...parts.lifeJob, placeOf: (battery: Battery) => placeAt(battery, parts), isParked };
  for (const chain of chains) {
    const inLife = lifeChain(chain, parts);
    const service = inLife.length === 0 ? undefined : serviceOf(inLife, parts);
    const battery = batteryOf(chain, service, parts);
    batteries.push(battery);
    checkPlace(battery, placeJob);
    checkAges(battery, parts.lines, parts.lifeJob.findings);
    const life = service === undefined ? undefined : lifeOf(inLife, service, parts.lifeJob);
    if (life !== undefined) lives.push(life);
    if (service === undefined && battery.whereabouts !== 'inStock') {
      for (const line of chain) ageUnknown.add(line);
      reportAgeUnknown(battery, parts.lines, parts.lifeJob.findings);
    }
  }
  return { batteries, lives, ageUnknown };
}

// A row of a shelf without dates closes no period and opens none.
function lifeChain(chain: Chain, { where, dates }: Parts): Chain {
  const last = chain.at(-1)!;
  const isShelf = where[last] === 'inStock' && Number.isNaN(dates.installed.first[last]!);
  return isShelf ? chain.slice(0, -1) : chain;
}

function parkedLookup(parts: Parts): (battery: Battery) => boolean {
  const rows = new Set<number>();
  parts.parked.forEach((parked, line) => {
    if (parked === 1) rows.add(parts.lines.rows[line]!);
  });
  return (battery) => rows.has(battery.row) || placeAt(battery, parts)?.parked === true;
}

const placeAt = (battery: Battery, { request }: Parts): Place | undefined =>
  placeOf(battery, request.settings.sites as NamedPlaces);

function batteryOf(chain: Chain, service: Service | undefined, parts: Parts): Battery {
  const { lines, dates, where, constructions } = parts;
  const line = chain.at(-1)!;
  const construction = constructions.of[line]!;
  const assumed = constructions.assumed[line] === 1;
  const raw = latestReadings(chain, construction, parts.readingsJob);
  const text = (field: Field): string => lines.text(field)[line]!;
  const { verdict, verdictReason, charge, readings } = conditionOf(raw, construction, assumed);
  const battery: Battery = {
    row: lines.rows[line]!,
    serial: text('serial'),
    stockNumber: text('stockNumber'),
    maker: text('maker'),
    lot: parts.made.lots[line]!,
    type: text('type'),
    site: parts.sites[line]!,
    vehicle: text('vehicle'),
    set: text('set'),
    place: text('place') || undefined,
    storagePlace: text('storagePlace') || undefined,
    construction,
    constructionAssumed: assumed || undefined,
    whereabouts: where[line]!,
    made: chain.map((one) => dates.made.first[one]!).find((day) => !Number.isNaN(day)),
    installed: service?.first,
    installedFromMade: chain.some((one) => dates.fromMade[one] === 1) || undefined,
    monthsOut: service?.monthsOut ?? 0,
    ageMonths: ageOf(line, service, parts),
    verdict,
    verdictReason,
    charge,
    readings,
  };
  if (battery.whereabouts === 'inService') {
    const trend = testTrendOf(battery.serial, raw, construction, parts.readingsJob);
    return trend === undefined ? battery : { ...battery, trend };
  }
  if (battery.whereabouts !== 'inStock') return battery;
  return { ...battery, chargeBy: chargeByOf(raw.chargedOn, placeAt(battery, parts)?.average, construction) };
}

function ageOf(
  line: number,
  service: Service | undefined,
  { dates, where, request }: Parts,
): number | undefined {
  const until = where[line] === 'inService' ? request.asOf : dates.removed.first[line]!;
  return service === undefined || Number.isNaN(until) ? undefined : ageOn(until, service);
}

function countsOf(
  lines: Lines,
  ageUnknown: ReadonlySet<number>,
  twice: ReadonlySet<number>,
  { repairedRows }: Findings,
): Fleet['counts'] {
  let [used, repaired] = [0, 0];
  for (let line = 0; line < lines.count; line += 1) {
    if (twice.has(line) || ageUnknown.has(line)) continue;
    if (repairedRows.has(lines.rows[line]!)) repaired += 1;
    else used += 1;
  }
  return { used, repaired, ageUnknown: ageUnknown.size };
}
