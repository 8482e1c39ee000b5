import type { Outcome } from '../basics/outcome.ts';
import { answer } from '../basics/outcome.ts';
import type { Construction } from '../service/battery.ts';
import { chargeBand } from './chargeBand.ts';
import { freezingPoint } from './freezingPoint.ts';
import { USUAL_CELSIUS } from './restReading.ts';
import { restVoltage } from './restVoltage.ts';

/**
 * Highest temperature at which a 12 V battery's electrolyte may begin to freeze, from its rest voltage: that of the
 * acid at the low end of the charge band, or of the acid that the voltage itself tells where that is weaker still (under
 * the empty end the band is held at 0, but acid goes on thinning). Under 11.3 V the acid is as good as water.
 * @param restVolts voltage after 3 h at rest or more, nothing connected [V], 6 to 16
 * @param celsius battery temperature when it was read [C], -40 to 60, default 25
 * @param construction AGM, flooded, gel, or own full rest voltage at 25 C [V], 12.0 to 13.5; default AGM
 * @returns freezing point [C], or undefined where the acid is too strong to freeze at any temperature taken here
 * @problem badInput       as chargeBand
 * @problem outOfRange     as chargeBand
 * @problem notEnoughData  when the battery was not at rest
 * @source tm5-1185 as freezingPoint
 * @example highestFreezingPoint(11.9, 25, 'AGM') // -9.3
 */
export function highestFreezingPoint(
  restVolts: number,
  celsius: number = USUAL_CELSIUS,
  construction: Construction = 'AGM',
): Outcome<number | undefined> {
  const band = chargeBand(restVolts, celsius, construction);
  if (!band.ok) return band.problem.because === 'deadCell' ? answer(0) : band;
  const lowVolts = restVoltage(band.value.low, undefined, construction);
  if (!lowVolts.ok) return lowVolts;
  const points = [freezingPoint(lowVolts.value), freezingPoint(restVolts, celsius)];
  const known = points.flatMap((point) => (point.ok ? [point.value] : []));
  // Both are over 13.0 V for batteries of strong acid only.
  return answer(known.length === 0 ? undefined : Math.max(...known));
}
