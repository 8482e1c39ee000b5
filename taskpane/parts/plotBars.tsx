import { shownMoney, wholeNumber } from '../shownNumber.ts';
import { PLOT, PlotFrame } from './plotFrame.tsx';
import { linearScale, niceTicks } from '../plot/plotScale.ts';

/** A value with its name. */
export type Bar = { readonly label: string; readonly value: number };

/** With more bars than these, numbers on top would touch. */
const MOST_NUMBERS = 6;

/** Share of its place that a bar fills. */
const FILLED = 0.6;

/** Values side by side as bars with their numbers on top; those below zero hang down. */
export function PlotBars({
  title,
  unit,
  bars,
  period,
}: {
  readonly title: string;
  readonly unit: string;
  readonly bars: readonly Bar[];
  readonly period: string;
}) {
  const values = bars.map(({ value }) => value);
  const ticks = niceTicks(Math.min(...values, 0), Math.max(...values, 0));
  const y = linearScale([ticks[0]!, ticks.at(-1)!], [PLOT.bottom, PLOT.top]);
  const place = (PLOT.right - PLOT.left) / Math.max(1, bars.length);
  const middle = (index: number): number => PLOT.left + (index + 0.5) * place;
  return (
    <PlotFrame
      title={title}
      unit={unit}
      ticks={ticks}
      y={y}
      labels={bars.map(({ label }) => label)}
      x={middle}
      format={shortNumber}
      numbers={{
        heads: [{ text: period }, { text: unit, number: true }],
        rows: bars.map(({ label, value }) => [label, shownMoney(value)]),
      }}
    >
      {bars.map(({ label, value }, index) => (
        <rect
          key={label}
          class="bar"
          x={middle(index) - (FILLED * place) / 2}
          width={FILLED * place}
          y={Math.min(y(0), y(value))}
          height={Math.abs(y(value) - y(0))}
        />
      ))}
      {bars.length <= MOST_NUMBERS && (
        <g class="axisText">
          {bars.map(({ label, value }, index) => (
            <text key={label} x={middle(index)} y={Math.min(y(0), y(value)) - 4} text-anchor="middle">
              {shortNumber(value)}
            </text>
          ))}
        </g>
      )}
      <line class="axis" x1={PLOT.left} x2={PLOT.right} y1={y(0)} y2={y(0)} />
    </PlotFrame>
  );
}

/** Large amounts with k or M, so that they fit beside an axis. */
export function shortNumber(value: number): string {
  const size = Math.abs(value);
  if (size >= 1e6) return `${Number((value / 1e6).toPrecision(3))}M`;
  if (size >= 1e4) return `${Number((value / 1e3).toPrecision(3))}k`;
  return wholeNumber(value);
}
