import type { Member } from './member.ts';
import { bag, notFound } from './member.ts';
import { placeOf, refuseProtected } from './rangeMember.ts';
import type { ModelChart, ModelSeries, ModelSheet } from './workbookModel.ts';
import { newId, Refusal } from './workbookModel.ts';

const CHART_TYPES = ['ColumnClustered', 'Line'];

/** The charts of a sheet. */
export function chartsMember(sheet: ModelSheet): Member {
  return {
    of: 'ChartCollection',
    items: () => sheet.charts.map((chart) => chartMember(sheet, chart)),
    item: (key) => {
      const found = sheet.charts.find(({ id }) => id === key);
      return found === undefined ? notFound(`chart ${String(key)}`) : chartMember(sheet, found);
    },
    call: {
      Add: (type: string, source: Member, by: string) => {
        refuseProtected(sheet);
        if (!CHART_TYPES.includes(type) || by !== 'Columns')
          throw new Refusal('NotModelled', `chart ${type} ${by}`);
        const { block } = placeOf(source);
        const series = { values: block, categories: undefined, settings: new Map() };
        const chart = { id: newId('chart'), type, settings: new Map(), series: [series], at: undefined };
        sheet.charts.push(chart);
        return chartMember(sheet, chart);
      },
    },
  };
}

const AXIS = ['NumberFormat', 'Minimum', 'MajorTickMark', 'MinorTickMark'] as const;

function chartMember(sheet: ModelSheet, chart: ModelChart): Member {
  const remember = (path: string, value: unknown): void => {
    refuseProtected(sheet);
    chart.settings.set(path, value);
  };
  const own = bag('Chart', remember, '', ['Name'], {
    Title: ['Text', 'Visible'],
    Legend: ['Visible', 'Position'],
  });
  const axis = (name: string) => (): Member => {
    const path = `axes/${name}/`;
    return bag('ChartAxis', remember, path, AXIS, { Title: ['Text'], MajorGridlines: ['Visible'] });
  };
  return {
    ...own,
    id: chart.id,
    get: { Id: () => chart.id },
    child: {
      ...own.child,
      Axes: () => ({
        of: 'ChartAxes',
        child: { ValueAxis: axis('valueAxis'), CategoryAxis: axis('categoryAxis') },
      }),
      Series: () => seriesCollection(chart),
    },
    call: {
      SetPosition: (from: string, to: string) => void (chart.at = [from, to]),
      Delete: () => void sheet.charts.splice(sheet.charts.indexOf(chart), 1),
    },
  };
}

function seriesCollection(chart: ModelChart): Member {
  return {
    of: 'ChartSeriesCollection',
    items: () => chart.series.map(seriesMember),
    call: {
      GetItemAt: (index: number) => {
        const found = chart.series[index];
        return found === undefined ? notFound(`series ${index}`) : seriesMember(found);
      },
      Add: (name: string) => {
        const series: ModelSeries = {
          values: undefined,
          categories: undefined,
          settings: new Map([['name', name]]),
        };
        chart.series.push(series);
        return seriesMember(series);
      },
    },
  };
}

function seriesMember(series: ModelSeries): Member {
  const remember = (path: string, value: unknown): void => void series.settings.set(path, value);
  const own = bag('ChartSeries', remember, '', ['Name', 'MarkerStyle']);
  const line = bag('ChartLineFormat', remember, 'format/line/', ['Color', 'LineStyle', 'Weight']);
  const fill: Member = {
    of: 'ChartFill',
    call: { SetSolidColor: (color: string) => remember('format/fill', color) },
  };
  return {
    ...own,
    child: { Format: () => ({ of: 'ChartSeriesFormat', child: { Line: () => line, Fill: () => fill } }) },
    call: {
      SetValues: (range: Member) => void (series.values = placeOf(range).block),
      SetXAxisValues: (range: Member) => void (series.categories = placeOf(range).block),
    },
  };
}
