import { oneDecimal, wholeNumber } from '../shownNumber.ts';
import { PLOT_WORDS } from '../text/paneText.ts';
import { PLOT, PlotFrame } from './plotFrame.tsx';
import { bandPath, linearScale, linePath, niceTicks } from '../plot/plotScale.ts';

/** A value with its band. */
export type BandPoint = {
  readonly label: string;
  readonly expected: number;
  readonly low: number;
  readonly high: number;
};

/** Values over time as a line, with their band as an area between two broken lines: readable without any colour. */
export function PlotBand({
  title,
  unit,
  points,
  period,
}: {
  readonly title: string;
  readonly unit: string;
  readonly points: readonly BandPoint[];
  /** What one point stands for, as head of the table's first column. */
  readonly period: string;
}) {
  const ticks = niceTicks(0, Math.max(...points.map(({ high, expected }) => Math.max(high, expected)), 1));
  const y = linearScale([ticks[0]!, ticks.at(-1)!], [PLOT.bottom, PLOT.top]);
  const across = linearScale([0, Math.max(1, points.length - 1)], [PLOT.left + 12, PLOT.right - 12]);
  const line = (of: (point: BandPoint) => number) =>
    points.map((point, index) => [across(index), y(of(point))] as const);
  const [low, high] = [line((point) => point.low), line((point) => point.high)];
  return (
    <PlotFrame
      title={title}
      unit={unit}
      ticks={ticks}
      y={y}
      labels={points.map(({ label }) => label)}
      x={across}
      format={wholeNumber}
      numbers={{
        heads: [{ text: period }, ...HEADS.map((text) => ({ text, number: true }))],
        rows: points.map((point) => [
          point.label,
          oneDecimal(point.expected),
          wholeNumber(point.low),
          wholeNumber(point.high),
        ]),
      }}
    >
      <path class="band" d={bandPath(low, high)} />
      <path class="edge" d={linePath(low)} />
      <path class="edge" d={linePath(high)} />
      <path class="line" d={linePath(line((point) => point.expected))} />
    </PlotFrame>
  );
}

const HEADS = [PLOT_WORDS.expected, PLOT_WORDS.low, PLOT_WORDS.high] as const;
