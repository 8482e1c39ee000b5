import type { Day } from '../basics/calendar.ts';
import { isoDay } from '../basics/calendar.ts';
import { FROST_MARGIN_KELVIN } from '../cranking/verdict.ts';
import { chargeBand } from '../electrochemistry/chargeBand.ts';
import { freezingPoint } from '../electrochemistry/freezingPoint.ts';
import { restVoltage } from '../electrochemistry/restVoltage.ts';
import type { Battery, Construction } from '../service/battery.ts';
import type { Findings } from './findings.ts';
import type { Lines } from './lines.ts';

/** What is known about a place: the coldest and the average temperature [C], whether vehicles stand parked there. */
export type Place = {
  readonly coldest?: number;
  readonly average?: number;
  readonly heated: boolean;
  readonly parked: boolean;
};

/** A battery standing in a vehicle longer than this without a charge is to be looked at [days]. Common practice. */
const STANDING_DAYS = 30;

/** What findings about a battery's state and place are told from. */
export type PlaceJob = {
  readonly lines: Lines;
  readonly asOf: Day;
  readonly findings: Findings;
  readonly placeOf: (battery: Battery) => Place | undefined;
  readonly isParked: (battery: Battery) => boolean;
};

/** What a battery's state and place together make worth checking: condemned in service, due for charge, frost, standing. */
export function checkPlace(battery: Battery, job: PlaceJob): void {
  const { lines, findings, asOf } = job;
  if (battery.whereabouts === 'removed') return;
  if (battery.whereabouts === 'inService' && battery.verdict === 'Condemned') {
    const given = battery.verdictReason ?? 'Condemned';
    findings.add(battery.row, {
      kind: 'condemned but still in service',
      column: lines.head('serial'),
      given,
    });
  }
  if (battery.whereabouts === 'inStock' && battery.chargeBy !== undefined && battery.chargeBy <= asOf) {
    const given = `charge again by ${isoDay(battery.chargeBy)}`;
    findings.add(battery.row, { kind: 'stock due for charge', column: lines.head('chargedOn'), given });
  }
  checkFrost(battery, job);
  checkStanding(battery, job);
}

function checkFrost(battery: Battery, { lines, findings, placeOf }: PlaceJob): void {
  const coldest = placeOf(battery)?.coldest;
  const volts = battery.readings?.restVolts;
  if (coldest === undefined || volts === undefined || battery.charge === undefined) return;
  const freezes = freezesAt(volts, battery.readings?.celsius, battery.construction);
  if (freezes === undefined || coldest >= freezes + FROST_MARGIN_KELVIN) return;
  const given = `${volts} V: may freeze at ${freezes.toFixed(0)} C; coldest here ${coldest} C`;
  const group = battery.site === '' ? {} : { group: `frost at ${battery.site}` };
  findings.add(battery.row, { kind: 'may freeze here', column: lines.head('restVolts'), given, ...group });
}

// The freezing point at the low end of the charge band: acid that may be weaker than the reading says.
function freezesAt(
  volts: number,
  celsius: number | undefined,
  construction: Construction,
): number | undefined {
  const band = chargeBand(volts, celsius, construction);
  if (!band.ok) return band.problem.because === 'deadCell' ? 0 : undefined;
  const low = restVoltage(band.value.low, 25, construction);
  const point = low.ok ? freezingPoint(low.value, 25) : low;
  return point.ok ? point.value : undefined;
}

function checkStanding(battery: Battery, { lines, findings, asOf, isParked }: PlaceJob): void {
  if (battery.whereabouts !== 'inService' || !isParked(battery)) return;
  const charged = battery.readings?.chargedOn;
  if (charged !== undefined && asOf - charged <= STANDING_DAYS) return;
  const given =
    charged === undefined ? 'parked, no charge on record' : `parked, charged last on ${isoDay(charged)}`;
  findings.add(battery.row, {
    kind: 'standing in a vehicle over 30 days',
    column: lines.head('status'),
    given,
  });
}
