/** A point of a chart in its own units. */
export type Point = readonly [x: number, y: number];

/** A line or a filled shape with the words that stand at one of its points. */
export type Shape = {
  readonly points: readonly Point[];
  readonly colour: string;
  readonly dashes?: string;
  readonly filled?: boolean;
};

/** Words at a point. */
export type Label = {
  readonly at: Point;
  readonly text: string;
  readonly colour?: string;
  readonly anchor?: string;
};

/** A small chart: what it says to those who don't see it, its axes, its shapes. */
export type Chart = {
  readonly title: string;
  readonly x: Axis;
  readonly y: Axis;
  readonly shapes: readonly Shape[];
  readonly labels: readonly Label[];
};

/** An axis: from, to, where its numbers stand, how they are written, what it shows. */
export type Axis = {
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly number[];
  readonly show: (value: number) => string;
  readonly name: string;
};

const WIDTH = 720;
const HEIGHT = 400;
const FRAME = { left: 64, right: 24, top: 20, bottom: 52 };
const INK = '#1f2933';
const GRID = '#d9dee3';

/** The chart as the text of an SVG file. */
export function svgOf(chart: Chart): string {
  const { x, y } = chart;
  const across = (value: number): number =>
    FRAME.left + ((value - x.from) / (x.to - x.from)) * (WIDTH - FRAME.left - FRAME.right);
  const down = (value: number): number =>
    HEIGHT - FRAME.bottom - ((value - y.from) / (y.to - y.from)) * (HEIGHT - FRAME.top - FRAME.bottom);
  const place = ([a, b]: Point): string => `${across(a).toFixed(1)},${down(b).toFixed(1)}`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" font-family="sans-serif" font-size="13">`,
    `<title>${escaped(chart.title)}</title>`,
    `<rect width="${WIDTH}" height="${HEIGHT}" fill="#ffffff"/>`,
    ...x.ticks.flatMap((tick) => [
      line([across(tick), FRAME.top], [across(tick), HEIGHT - FRAME.bottom]),
      words([across(tick), HEIGHT - FRAME.bottom + 18], x.show(tick), 'middle'),
    ]),
    ...y.ticks.flatMap((tick) => [
      line([FRAME.left, down(tick)], [WIDTH - FRAME.right, down(tick)]),
      words([FRAME.left - 8, down(tick) + 4], y.show(tick), 'end'),
    ]),
    words([(WIDTH + FRAME.left - FRAME.right) / 2, HEIGHT - 12], x.name, 'middle'),
    `<text transform="translate(16 ${HEIGHT / 2}) rotate(-90)" text-anchor="middle" fill="${INK}">${escaped(y.name)}</text>`,
    ...chart.shapes.map((shape) => drawn(shape, place)),
    ...chart.labels.map(({ at, text, colour, anchor }) =>
      words([across(at[0]), down(at[1])], text, anchor ?? 'start', colour),
    ),
    '</svg>',
    '',
  ].join('\n');
}

function drawn({ points, colour, dashes, filled = false }: Shape, place: (point: Point) => string): string {
  const list = points.map(place).join(' ');
  if (filled) return `<polygon points="${list}" fill="${colour}" fill-opacity="0.22"/>`;
  const dash = dashes === undefined ? '' : ` stroke-dasharray="${dashes}"`;
  return `<polyline points="${list}" fill="none" stroke="${colour}" stroke-width="2.2"${dash}/>`;
}

const line = ([x1, y1]: Point, [x2, y2]: Point): string =>
  `<line x1="${x1.toFixed(1)}" y1="${y1.toFixed(1)}" x2="${x2.toFixed(1)}" y2="${y2.toFixed(1)}" stroke="${GRID}"/>`;

const words = ([x, y]: Point, text: string, anchor: string, colour = INK): string =>
  `<text x="${x.toFixed(1)}" y="${y.toFixed(1)}" text-anchor="${anchor}" fill="${colour}">${escaped(text)}</text>`;

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');

/** Numbers from one to another, both included, in steps. */
export function steps(from: number, to: number, step: number): number[] {
  return Array.from({ length: Math.round((to - from) / step) + 1 }, (_, index) => from + index * step);
}

/** The outline of a band between two lines over the same places. */
export function bandOutline(xs: readonly number[], low: readonly number[], high: readonly number[]): Point[] {
  const upper = xs.map((x, index): Point => [x, high[index]!]);
  const lower = xs.map((x, index): Point => [x, low[index]!]).reverse();
  return [...upper, ...lower];
}
