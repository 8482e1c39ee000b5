import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import type { Scale } from '../plot/plotScale.ts';
import { everyNth } from '../plot/plotScale.ts';
import { PLOT_NUMBERS } from '../text/paneText.ts';
import type { TableHead } from './wideTable.tsx';
import { WideTable } from './wideTable.tsx';

/** Size of every picture in its own units, and the part of it in which values are drawn. */
export const PLOT = { width: 320, height: 190, left: 46, right: 314, top: 18, bottom: 160 } as const;

/** Width of a letter of an axis, and what is kept free between two labels. */
const LETTER = 6.2;
const BETWEEN = 10;

/** How many labels fit under a picture without touching each other. */
function mostLabels(labels: readonly string[]): number {
  const longest = Math.max(...labels.map((label) => label.length), 1);
  return Math.max(2, Math.floor((PLOT.right - PLOT.left) / (longest * LETTER + BETWEEN)));
}

/** A picture with its title, axes, and the same numbers as a table for those who don't see it. */
export function PlotFrame({
  title,
  unit,
  ticks,
  y,
  labels,
  x,
  format,
  numbers,
  children,
}: {
  readonly title: string;
  /** What the upright axis counts. */
  readonly unit: string;
  readonly ticks: readonly number[];
  readonly y: Scale;
  readonly labels: readonly string[];
  /** The middle of each label. */
  readonly x: (index: number) => number;
  readonly format: (value: number) => string;
  readonly numbers: { readonly heads: readonly TableHead[]; readonly rows: readonly (readonly string[])[] };
  readonly children: ComponentChildren;
}) {
  const id = useId();
  const step = everyNth(labels.length, mostLabels(labels));
  return (
    <figure class="plot">
      <figcaption id={id}>{title}</figcaption>
      <svg viewBox={`0 0 ${PLOT.width} ${PLOT.height}`} role="img" aria-labelledby={id}>
        <g class="grid">
          {ticks.map((tick) => (
            <line key={tick} x1={PLOT.left} x2={PLOT.right} y1={y(tick)} y2={y(tick)} />
          ))}
        </g>
        <g class="axisText">
          <text x={2} y={10}>
            {unit}
          </text>
          {ticks.map((tick) => (
            <text key={tick} x={PLOT.left - 5} y={y(tick) + 4} text-anchor="end">
              {format(tick)}
            </text>
          ))}
          {labels.map((label, index) =>
            index % step === 0 ? (
              <text key={label} x={x(index)} y={PLOT.bottom + 16} text-anchor="middle">
                {label}
              </text>
            ) : null,
          )}
        </g>
        {children}
      </svg>
      <details>
        <summary>{PLOT_NUMBERS}</summary>
        <WideTable caption={title} heads={numbers.heads} rows={numbers.rows} />
      </details>
    </figure>
  );
}
