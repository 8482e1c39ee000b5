import type { Chart, Sheet } from '../../../src/report/sheet.ts';
import { address } from '../../../src/report/sheet.ts';
import { rangeOn } from './cells.ts';
import type { Pending } from './session.ts';
import { NUMBER_CODES } from '../sheetLooks.ts';

/** Series told apart without colour: lines by thickness and dashes, columns by dark and light. */
const LINES = [
  { color: '#1F2A33', weight: 2.5, lineStyle: 'Continuous' },
  { color: '#5B6670', weight: 1.25, lineStyle: 'Dash' },
  { color: '#5B6670', weight: 1.25, lineStyle: 'Dot' },
] as const;
const COLUMNS = ['#1F2A33', '#B8BFC6'] as const;

// Bytes of one chart on the line, about.
const CHART_BYTES = 8_000;

/** Draws the charts of a sheet over cells that are written already. */
export async function writeCharts(on: Excel.Worksheet, { charts }: Sheet, pending: Pending): Promise<void> {
  for (const chart of charts) {
    await pending.spend(CHART_BYTES);
    writeChart(on, chart);
  }
}

function writeChart(on: Excel.Worksheet, chart: Chart): void {
  const type = chart.kind === 'line' ? 'Line' : 'ColumnClustered';
  const drawn = on.charts.add(type, rangeOn(on, chart.series[0]!.values), 'Columns');
  drawn.name = chart.title;
  drawn.title.text = chart.title;
  drawn.legend.visible = chart.series.length > 1;
  if (chart.series.length > 1) drawn.legend.position = 'Bottom';
  setAxes(drawn.axes, chart);
  chart.series.forEach((_, index) => writeSeries(on, drawn, chart, index));
  const { row, column, rows, columns } = chart.at;
  drawn.setPosition(address(row, column), address(row + rows - 1, column + columns - 1));
}

function setAxes({ categoryAxis, valueAxis }: Excel.ChartAxes, chart: Chart): void {
  categoryAxis.title.text = chart.xTitle;
  categoryAxis.majorGridlines.visible = false;
  valueAxis.title.text = chart.yTitle;
  valueAxis.majorGridlines.visible = true;
  valueAxis.numberFormat = NUMBER_CODES[chart.yFormat] ?? 'General';
  if (chart.kind === 'line') valueAxis.minimum = 0;
}

function writeSeries(on: Excel.Worksheet, drawn: Excel.Chart, chart: Chart, index: number): void {
  const { name, values } = chart.series[index]!;
  const series = index === 0 ? drawn.series.getItemAt(0) : drawn.series.add(name);
  series.name = name;
  if (index > 0) series.setValues(rangeOn(on, values));
  series.setXAxisValues(rangeOn(on, chart.categories));
  if (chart.kind === 'column') return series.format.fill.setSolidColor(COLUMNS[index % COLUMNS.length]!);
  const { color, weight, lineStyle } = LINES[index % LINES.length]!;
  series.markerStyle = 'None';
  series.format.line.color = color;
  series.format.line.weight = weight;
  series.format.line.lineStyle = lineStyle;
}
