import type { FOverGridImage, FOverGridImageBuilder } from '@univerjs/sheets-drawing/facade';
import { isoDay } from '../../../src/basics/calendar.ts';
import type { Block, Chart, Sheet } from '../../../src/report/sheet.ts';
import type { ChartFigures } from '../../plot/chartSvg.ts';
import { chartSvg } from '../../plot/chartSvg.ts';
import type { StartedWorkbook } from './engine.ts';
import type { LiveSheet } from './live.ts';
import { liveSheets } from './live.ts';
import { isDateFormat } from '../dateFormat.ts';

/** What a sheet can do where there is a screen. */
type WithImages = {
  readonly newOverGridImage: () => FOverGridImageBuilder;
  readonly insertImages: (images: readonly object[]) => unknown;
  readonly getImageById: (id: string) => FOverGridImage | null;
};

type DrawnChart = {
  readonly sheetId: string;
  /** The sheet itself: one that was undone and done again is another, without its pictures. */
  readonly sheet: LiveSheet['sheet'];
  readonly chart: Chart;
  readonly imageId: string;
  source: string;
};

/** The charts on sheets of our own: pictures over the grid that follow its cells. */
export type Charts = {
  readonly add: (sheet: Sheet, id: string) => void;
  /** Draws anew what has changed, a moment later. */
  readonly refresh: () => void;
  readonly forget: () => void;
};

const MOMENT = 300;

/** Keeps the charts of the workbook that is open; without a screen there are none. */
export function chartsOn(started: StartedWorkbook): Charts {
  keepPicturesOutOfUndo(started);
  let drawn: DrawnChart[] = [];
  let timer: ReturnType<typeof setTimeout> | undefined;
  const redraw = async (): Promise<void> => {
    const before = drawn;
    const after = await Promise.all(before.map((each) => redrawOne(started, each)));
    if (drawn === before) drawn = after;
  };
  return {
    add: (sheet, id) => {
      const live = liveSheets(started).find((each) => each.id === id);
      if (live === undefined || !hasImages(live.facade)) return;
      for (const chart of sheet.charts)
        void insertChart(started, live, live.facade, chart).then((made) => drawn.push(made));
    },
    refresh: () => {
      if (drawn.length === 0) return;
      clearTimeout(timer);
      timer = setTimeout(() => void redraw(), MOMENT);
    },
    forget: () => {
      clearTimeout(timer);
      drawn = [];
    },
  };
}

const hasImages = (facade: object): facade is WithImages & LiveSheet['facade'] =>
  'newOverGridImage' in facade;

async function insertChart(
  started: StartedWorkbook,
  live: LiveSheet,
  images: WithImages,
  chart: Chart,
  replaced?: string,
): Promise<DrawnChart> {
  const [size, source] = [sizeOf(live, chart), sourceOf(live, chart)];
  const image = await images
    .newOverGridImage()
    .setSource(source, started.core.ImageSourceType.BASE64)
    .setRow(chart.at.row)
    .setColumn(chart.at.column)
    .setWidth(size.width)
    .setHeight(size.height)
    .buildAsync();
  withoutUndo(() => {
    if (replaced !== undefined) images.getImageById(replaced)?.remove();
    images.insertImages([image]);
  });
  return { sheetId: live.id, sheet: live.sheet, chart, imageId: image.drawingId, source };
}

// Changing the picture itself would come among the user's own steps a moment later: a new one takes its place.
async function redrawOne(started: StartedWorkbook, drawn: DrawnChart): Promise<DrawnChart> {
  const { sheetId, chart, imageId, source } = drawn;
  const live = liveSheets(started).find(({ id }) => id === sheetId);
  if (live === undefined || !hasImages(live.facade)) return drawn;
  const isThere = live.facade.getImageById(imageId) !== null;
  if (!isThere) return live.sheet === drawn.sheet ? drawn : insertChart(started, live, live.facade, chart);
  if (sourceOf(live, chart) === source) return { ...drawn, sheet: live.sheet };
  return insertChart(started, live, live.facade, chart, imageId);
}

/** How long after its drawing the grid may still hand in a picture's own step. */
const AFTERMATH = 1000;
let drawingUntil = 0;
const guarded = new WeakSet<object>();

// A picture that follows its cells is no step of the user's own; the grid hands in such steps late. The service is
// handed out behind proxies that keep its methods: its class must be mended before anyone has asked for one.
function keepPicturesOutOfUndo({ core }: StartedWorkbook): void {
  const service = core.LocalUndoRedoService.prototype;
  if (guarded.has(service)) return;
  guarded.add(service);
  const push = service.pushUndoRedo;
  service.pushUndoRedo = function (this: typeof service, item) {
    const isPicture = item.undoMutations.some(({ id }) => id === 'sheet.mutation.set-drawing-apply');
    if (!isPicture || performance.now() > drawingUntil) push.call(this, item);
  };
}

function withoutUndo(draw: () => void): void {
  drawingUntil = performance.now() + AFTERMATH;
  draw();
}

function sizeOf({ facade }: LiveSheet, { at }: Chart): { width: number; height: number } {
  let [width, height] = [0, 0];
  for (let index = 0; index < at.columns; index += 1) width += facade.getColumnWidth(at.column + index);
  for (let index = 0; index < at.rows; index += 1) height += facade.getRowHeight(at.row + index);
  return { width: width - 8, height: height - 4 };
}

function sourceOf(live: LiveSheet, chart: Chart): string {
  const bytes = new TextEncoder().encode(chartSvg(figuresOf(live, chart), sizeOf(live, chart)));
  return `data:image/svg+xml;base64,${btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''))}`;
}

/** What a chart shows now. */
export function figuresOf(live: LiveSheet, chart: Chart): ChartFigures {
  const { kind, title, xTitle, yTitle } = chart;
  return {
    kind,
    title,
    xTitle,
    yTitle,
    categories: cellsOf(chart.categories).map(([row, column]) => categoryText(live, row, column)),
    series: chart.series.map(({ name, values }) => ({
      name,
      values: cellsOf(values).map(([row, column]) => numberAt(live, row, column)),
    })),
  };
}

const cellsOf = ({ row, column, rows, columns }: Block): (readonly [number, number])[] =>
  Array.from({ length: rows * columns }, (_, index) => [
    row + Math.floor(index / columns),
    column + (index % columns),
  ]);

function categoryText(live: LiveSheet, row: number, column: number): string {
  const value = live.value(row, column);
  if (typeof value !== 'number') return typeof value === 'string' ? value : '';
  return isDateFormat(live.numberCode(row, column) ?? '')
    ? isoDay(Math.floor(value)).slice(0, 7)
    : String(value);
}

function numberAt(live: LiveSheet, row: number, column: number): number | null {
  const value = live.value(row, column);
  return typeof value === 'number' ? value : null;
}
