import { chargeBand } from '../../src/electrochemistry/chargeBand.ts';
import { restVoltage } from '../../src/electrochemistry/restVoltage.ts';
import type { Outcome } from '../../src/basics/outcome.ts';
import { collapseRecords } from '../../src/life/lifeRecord.ts';
import type { LifePosterior } from '../../src/life/lifePosterior.ts';
import { lifePosterior } from '../../src/life/lifePosterior.ts';
import { posteriorShareFailed } from '../../src/life/posteriorQuantiles.ts';
import { ageBins } from '../../src/planning/ageBins.ts';
import { forecastCounts, horizonsFrom } from '../../src/planning/forecastCounts.ts';
import { makeDemo } from '../demo/demo.ts';
import type { DemoBattery } from '../demo/fleet.ts';
import { agesInService, trueLives } from '../demo/trueLives.ts';
import type { Axis, Point, Shape } from './chart.ts';
import { bandOutline, steps, svgOf } from './chart.ts';

/** A picture of docs/methods.md, drawn from the functions that it explains. */
export type Picture = { readonly file: string; readonly svg: string };

const BLUE = '#1f5f99';
const RUST = '#a5481e';
const GREEN = '#2f6b3a';
const percent = (share: number): string => `${Math.round(share * 100)} %`;

/** The pictures of docs/methods.md. */
export function pictures(): readonly Picture[] {
  const { batteries } = makeDemo();
  return [
    { file: 'charge.svg', svg: chargePicture() },
    { file: 'life.svg', svg: lifePicture(batteries) },
    { file: 'counts.svg', svg: countsPicture(batteries) },
  ];
}

function valueOf<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(`a picture asked for what there is not: ${outcome.problem.because}`);
  return outcome.value;
}

const share: Axis = { from: 0, to: 1, ticks: steps(0, 1, 0.25), show: percent, name: 'state of charge' };

function chargePicture(): string {
  const charges = steps(0, 1, 0.02);
  const curve = (celsius: number, construction: 'AGM' | 'flooded'): Point[] =>
    charges.map((charge) => [valueOf(restVoltage(charge, celsius, construction)), charge]);
  const volts = curve(25, 'AGM').map(([v]) => v);
  const bands = volts.map((v) => valueOf(chargeBand(v, 25, 'AGM')));
  const low = bands.map((band) => band.low);
  const high = bands.map((band) => band.high);
  return svgOf({
    title: 'State of charge against rest voltage: AGM at 25 C with its band, AGM at -30 C, flooded at 25 C',
    x: {
      from: 11.7,
      to: 13,
      ticks: steps(11.8, 13, 0.2),
      show: (v) => v.toFixed(1),
      name: 'rest voltage, V',
    },
    y: share,
    shapes: [
      { points: bandOutline(volts, low, high), colour: BLUE, filled: true },
      { points: curve(25, 'AGM'), colour: BLUE },
      { points: curve(-30, 'AGM'), colour: GREEN, dashes: '2 4' },
      { points: curve(25, 'flooded'), colour: RUST, dashes: '9 5' },
    ],
    labels: [
      {
        at: [12.98, 0.2],
        text: 'line: AGM at 25 C, with the band that nine in ten lie in',
        colour: BLUE,
        anchor: 'end',
      },
      { at: [12.98, 0.14], text: 'dots: AGM at -30 C', colour: GREEN, anchor: 'end' },
      { at: [12.98, 0.08], text: 'dashes: flooded at 25 C', colour: RUST, anchor: 'end' },
    ],
  });
}

const MONTHS = steps(0, 120, 2);

function lifePicture(batteries: readonly DemoBattery[]): string {
  const all = collapseRecords(trueLives(batteries));
  const few = trueLives(
    batteries.filter(({ stints }) => stints[0]?.vehicle.kind.name === 'Radio relay trailer'),
  );
  const prior = valueOf(lifePosterior([]));
  const blended = valueOf(lifePosterior(few));
  return svgOf({
    title:
      'Share failed by age: the rule of thumb alone, with a few failures, and with all records of the demonstration',
    x: { from: 0, to: 120, ticks: steps(0, 120, 12), show: String, name: 'months in service' },
    y: { ...share, name: 'share failed' },
    shapes: [
      ...believed(prior, '#6b7280', '2 4'),
      ...believed(blended, RUST, '9 5'),
      ...believed(valueOf(lifePosterior(all)), BLUE),
    ],
    labels: [
      { at: [62, 0.08], text: 'dots: the rule of thumb alone', colour: '#4b5563' },
      {
        at: [62, 0.14],
        text: `dashes: with ${blended.failures} failures of radio relay trailers`,
        colour: RUST,
      },
      { at: [62, 0.2], text: 'line: with every record of the demonstration', colour: BLUE },
    ],
  });
}

function believed(posterior: LifePosterior, colour: string, dashes?: string): readonly Shape[] {
  const at = (chance: number): number[] =>
    MONTHS.map((month) => posteriorShareFailed(posterior, month)(chance));
  const middle = at(0.5).map((failed, index): Point => [MONTHS[index]!, failed]);
  const band: Shape = { points: bandOutline(MONTHS, at(0.05), at(0.95)), colour, filled: true };
  return [band, dashes === undefined ? { points: middle, colour } : { points: middle, colour, dashes }];
}

function countsPicture(batteries: readonly DemoBattery[]): string {
  const life = valueOf(lifePosterior(collapseRecords(trueLives(batteries))));
  const { demands } = forecastCounts(ageBins(agesInService(batteries)), {
    life,
    windows: horizonsFrom([12]),
  });
  const demand = demands[0]!;
  const marks = [demand.expected, demand.quantile(0.8), demand.quantile(0.95)];
  const [from, to] = [
    Math.floor(demand.quantile(0.001) / 10) * 10,
    Math.ceil(demand.quantile(0.999) / 10) * 10,
  ];
  const counts = steps(from, to, 1);
  const upright = (count: number): Shape => ({
    points: [
      [count, 0],
      [count, demand.cdf(count)],
    ],
    colour: RUST,
    dashes: '4 4',
  });
  return svgOf({
    title: 'Chance that a number of batteries is enough for the next 12 months of the demonstration',
    x: { from, to, ticks: steps(from, to, 10), show: String, name: 'batteries for the next 12 months' },
    y: { ...share, name: 'chance that it is enough' },
    shapes: [
      { points: counts.map((count): Point => [count, demand.cdf(count)]), colour: BLUE },
      ...marks.map(upright),
    ],
    labels: [
      { at: [to - 1, 0.24], text: `expected: ${demand.expected.toFixed(1)}`, colour: RUST, anchor: 'end' },
      { at: [to - 1, 0.17], text: `enough 4 years in 5: ${marks[1]}`, colour: RUST, anchor: 'end' },
      { at: [to - 1, 0.1], text: `enough 19 years in 20: ${marks[2]}`, colour: RUST, anchor: 'end' },
    ],
  });
}
