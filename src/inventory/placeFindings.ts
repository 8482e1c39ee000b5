import type { Day } from '../basics/calendar.ts';
import { isoDay } from '../basics/calendar.ts';
import type { Battery } from '../service/battery.ts';
import type { Findings } from './findings.ts';
import type { Place } from './frost.ts';
import { frostAt } from './frost.ts';
import type { Lines } from './lines.ts';

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
  const frost = frostAt(battery, placeOf(battery));
  if (frost === undefined) return;
  const { volts, freezesAt, coldest } = frost;
  const given = `${volts} V: may freeze at ${freezesAt.toFixed(0)} C; coldest here ${coldest} C`;
  const group = battery.site === '' ? {} : { group: `frost at ${battery.site}` };
  findings.add(battery.row, { kind: 'may freeze here', column: lines.head('restVolts'), given, ...group });
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
