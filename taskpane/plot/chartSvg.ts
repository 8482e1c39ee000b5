import { everyNth, linearScale, linePath, niceTicks } from './plotScale.ts';

/** What a chart shows: a text for each category, and numbers for each series, null where there is none. */
export type ChartFigures = {
  readonly kind: 'column' | 'line';
  readonly title: string;
  readonly xTitle: string;
  readonly yTitle: string;
  readonly categories: readonly string[];
  readonly series: readonly { readonly name: string; readonly values: readonly (number | null)[] }[];
};

export type ChartSize = { readonly width: number; readonly height: number };

/** Told apart without colour, as in saved files: lines by thickness and dashes, columns by dark and light. */
const LINES = [
  'stroke="#1F2A33" stroke-width="2.5"',
  'stroke="#5B6670" stroke-width="1.5" stroke-dasharray="6 4"',
  'stroke="#5B6670" stroke-width="1.5" stroke-dasharray="1.5 3"',
];
const COLUMNS = ['fill="#1F2A33"', 'fill="#B8BFC6" stroke="#5B6670" stroke-width="0.5"'];

const LABEL_WIDTH = 62;
const LETTER = 5;

/** A chart as the text of an SVG picture of its own: no style sheet, no script, readable in black and white. */
export function chartSvg(figures: ChartFigures, { width, height }: ChartSize): string {
  const many = figures.series.length > 1;
  const frame = { left: 58, right: width - 14, top: 34, bottom: height - (many ? 62 : 44) };
  const values = figures.series.flatMap((each) => each.values.filter((value) => value !== null));
  const ticks = niceTicks(Math.min(0, ...values), Math.max(0, ...values));
  const y = linearScale([ticks[0]!, ticks.at(-1)!], [frame.bottom, frame.top]);
  const place = (frame.right - frame.left) / Math.max(1, figures.categories.length);
  const x = (index: number): number => frame.left + (index + 0.5) * place;
  const middle = (frame.left + frame.right) / 2;
  const parts = [
    `<rect width="${width}" height="${height}" fill="#FFFFFF" stroke="#B8BFC6"/>`,
    text(figures.title, middle, 20, 'font-size="13" font-weight="bold" text-anchor="middle"'),
    ...ticks.map((tick) => gridLine(tick, y(tick), frame)),
    ...categoryLabels(figures.categories, x, frame),
    figures.kind === 'line' ? lines(figures, x, y) : columns(figures, x, y, place),
    line(frame.left, y(0), frame.right, y(0), '#1F2A33'),
    text(figures.xTitle, middle, frame.bottom + 34, 'font-size="11" text-anchor="middle"'),
    text(figures.yTitle, 6, frame.top - 10, 'font-size="11"'),
    ...(many ? legend(figures, 20, height - 12) : []),
  ];
  const open = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" font-family="Arial, Liberation Sans, sans-serif" fill="#1F2A33" role="img">`;
  return `${open}<title>${escaped(figures.title)}</title>${parts.join('')}</svg>`;
}

type Frame = { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };

const escaped = (words: string): string => words.replace(/[<>&"]/g, (letter) => `&#${letter.charCodeAt(0)};`);

const at = (value: number): string => String(Number(value.toFixed(1)));

const text = (words: string, x: number, y: number, more: string): string =>
  `<text x="${at(x)}" y="${at(y)}" ${more}>${escaped(words)}</text>`;

const line = (x1: number, y1: number, x2: number, y2: number, colour: string): string =>
  `<line x1="${at(x1)}" y1="${at(y1)}" x2="${at(x2)}" y2="${at(y2)}" stroke="${colour}"/>`;

function gridLine(tick: number, y: number, { left, right }: Frame): string {
  const label = tick.toLocaleString('en-US', { maximumFractionDigits: 2 });
  return (
    line(left, y, right, y, '#DDE1E5') + text(label, left - 6, y + 4, 'font-size="10" text-anchor="end"')
  );
}

function categoryLabels(
  categories: readonly string[],
  x: (index: number) => number,
  { left, right, bottom }: Frame,
): string[] {
  const step = everyNth(categories.length, Math.max(1, Math.floor((right - left) / LABEL_WIDTH)));
  return categories.flatMap((words, index) =>
    index % step === 0 ? [text(words, x(index), bottom + 16, 'font-size="10" text-anchor="middle"')] : [],
  );
}

function lines({ series }: ChartFigures, x: (index: number) => number, y: (value: number) => number): string {
  return series
    .map(({ values }, index) => {
      // A missing value parts the line.
      const runs: [number, number][][] = [[]];
      values.forEach((value, place) => {
        if (value === null) runs.push([]);
        else runs.at(-1)!.push([x(place), y(value)]);
      });
      const path = runs.map(linePath).join('');
      return `<path d="${path}" fill="none" ${LINES[index % LINES.length]}/>`;
    })
    .join('');
}

function columns(
  { series }: ChartFigures,
  x: (index: number) => number,
  y: (value: number) => number,
  place: number,
): string {
  const width = (place * 0.7) / series.length;
  return series
    .flatMap(({ values }, index) =>
      values.map((value, category) => {
        const left = x(category) - place * 0.35 + index * width;
        const [top, bottom] = [y(Math.max(0, value ?? 0)), y(Math.min(0, value ?? 0))];
        return `<rect x="${at(left)}" y="${at(top)}" width="${at(width)}" height="${at(bottom - top)}" ${COLUMNS[index % COLUMNS.length]}/>`;
      }),
    )
    .join('');
}

function legend({ kind, series }: ChartFigures, left: number, y: number): string[] {
  let x = left;
  return series.map(({ name }, index) => {
    const mark =
      kind === 'line'
        ? `<path d="M${at(x)} ${at(y - 4)}h22" fill="none" ${LINES[index % LINES.length]}/>`
        : `<rect x="${at(x)}" y="${at(y - 9)}" width="12" height="10" ${COLUMNS[index % COLUMNS.length]}/>`;
    const room = kind === 'line' ? 28 : 17;
    const written = mark + text(name, x + room, y, 'font-size="10"');
    x += room + 14 + name.length * LETTER;
    return written;
  });
}
