import type { LifePicture, SharePoint } from '../../../src/planning/lifePicture.ts';
import { PLOT, PlotFrame } from '../../parts/plotFrame.tsx';
import type { Scale } from '../../plot/plotScale.ts';
import { bandPath, linearScale, linePath, niceTicks } from '../../plot/plotScale.ts';
import { PICTURE } from '../../text/lifeText.ts';

const HEADS = [
  { text: PICTURE.age, number: true },
  { text: PICTURE.share, number: true },
  { text: PICTURE.low, number: true },
  { text: PICTURE.high, number: true },
  { text: PICTURE.there, number: true },
];

const perCent = (share: number): string => `${Math.round(100 * share)} %`;

/** Highest tick for an age that many batteries have, in the picture's units. */
const TICK = 14;

/** What happened so far as steps, the curve that the plan counts with in its band, and the ages in service as ticks. */
export function LifePlot({ picture }: { readonly picture: LifePicture }) {
  const { steps, curve, inService } = picture;
  const oldest = curve.at(-1)!.age;
  const marks = niceTicks(0, oldest, 6);
  // The last label stands under the end of the scale, so that needs room for half of it.
  const x = linearScale([0, marks.at(-1)!], [PLOT.left, PLOT.right - 8]);
  const y = linearScale([0, 1], [PLOT.bottom, PLOT.top]);
  const at = (of: (point: SharePoint) => number) =>
    curve.map((point) => [x(point.age), y(of(point))] as const);
  const [low, high] = [at(({ low: share = 1 }) => share), at(({ high: share = 1 }) => share)];
  return (
    <>
      <PlotFrame
        title={PICTURE.title}
        unit={PICTURE.y}
        ticks={[0, 0.25, 0.5, 0.75, 1]}
        y={y}
        labels={marks.map(String)}
        x={(index) => x(marks[index]!)}
        format={perCent}
        numbers={{
          heads: HEADS,
          rows: curve.map((point) => row(point, oldest / (curve.length - 1), inService)),
        }}
      >
        <path class="band" d={bandPath(low, high)} />
        <path class="edge" d={linePath(low)} />
        <path class="edge" d={linePath(high)} />
        <path class="line" d={linePath(at(({ share }) => share))} />
        <path class="steps" d={stepPath(steps, x, y)} />
        <path class="axis" d={tickPath(inService, x)} />
      </PlotFrame>
      <ul class="legend">
        <li>
          <Sample kind="steps" /> {steps.length > 0 ? PICTURE.steps : PICTURE.noSteps}
        </li>
        <li>
          <Sample kind="line" /> {PICTURE.curve}
        </li>
        <li>
          <Sample kind="edge" /> {PICTURE.band}
        </li>
        <li>
          <Sample kind="axis" /> {PICTURE.ticks}
        </li>
      </ul>
    </>
  );
}

/** How a line of the picture looks. */
function Sample({ kind }: { readonly kind: string }) {
  return (
    <svg class="sample" viewBox="0 0 24 8" aria-hidden="true">
      <path class={kind} d={kind === 'axis' ? 'M4 8V2M12 8V4M20 8V1' : 'M0 4H24'} />
    </svg>
  );
}

/** One line of the table: the share at an age, and how many batteries now in service have come there since the line before. */
function row(point: SharePoint, step: number, inService: readonly number[]): string[] {
  const from = Math.max(0, Math.ceil(point.age - step));
  const there = inService.slice(from, Math.ceil(point.age)).reduce((sum, count) => sum + count, 0);
  const { age, share, low = share, high = share } = point;
  return [age.toFixed(0), perCent(share), perCent(low), perCent(high), String(there)];
}

function stepPath(steps: readonly SharePoint[], x: Scale, y: Scale): string {
  const corners = steps.flatMap(({ age, share }, index) => {
    const before = steps[index - 1]?.share ?? share;
    return [[x(age), y(before)] as const, [x(age), y(share)] as const];
  });
  return linePath(corners);
}

function tickPath(inService: readonly number[], x: Scale): string {
  const most = inService.reduce((a, b) => Math.max(a, b), 1);
  return inService
    .map((count, age) =>
      count === 0 ? '' : `M${x(age + 0.5).toFixed(1)} ${PLOT.bottom}v-${((TICK * count) / most).toFixed(1)}`,
    )
    .join('');
}
