import { JSDOM } from 'jsdom';
import { describe, expect, it } from 'vitest';
import type { ChartFigures } from '../../../taskpane/plot/chartSvg.ts';
import { chartSvg } from '../../../taskpane/plot/chartSvg.ts';

const figures = (more: Partial<ChartFigures> = {}): ChartFigures => ({
  kind: 'column',
  title: 'Money <net> & "gross"',
  xTitle: 'fiscal year',
  yTitle: 'crowns',
  categories: ['FY2026', 'FY2027'],
  series: [{ name: 'need', values: [100, 200] }],
  ...more,
});

const drawn = (given: ChartFigures) =>
  new JSDOM(chartSvg(given, { width: 400, height: 240 }), { contentType: 'image/svg+xml' }).window.document;

describe('a chart as a picture', () => {
  it('is well formed whatever its texts hold, and says its title', () => {
    const document = drawn(figures());
    expect(document.querySelector('title')!.textContent).toBe('Money <net> & "gross"');
    expect(chartSvg(figures(), { width: 400, height: 240 })).not.toMatch(/style=|<script|href/);
  });

  it('draws columns as high as their values, from the zero line', () => {
    const bars = [...drawn(figures()).querySelectorAll('rect')].slice(1);
    const [first, second] = bars.map((bar) => Number(bar.getAttribute('height')));
    expect(second).toBeCloseTo(2 * first!, 0);
    const feet = bars.map((bar) => Number(bar.getAttribute('y')) + Number(bar.getAttribute('height')));
    expect(feet[0]).toBeCloseTo(feet[1]!, 0);
  });

  it('hangs a refund under the zero line', () => {
    const [, up, down] = drawn(figures({ series: [{ name: 'net', values: [100, -50] }] })).querySelectorAll(
      'rect',
    );
    const foot = Number(up!.getAttribute('y')) + Number(up!.getAttribute('height'));
    expect(Number(down!.getAttribute('y'))).toBeCloseTo(foot, 0);
  });

  it('parts a line where a value is missing, and tells lines apart without colour', () => {
    const series = [
      { name: 'expected', values: [1, 2, null, 4, 5] },
      { name: 'low', values: [0, 1, 2, 3, 4] },
    ];
    const lines = figures({ kind: 'line', categories: ['a', 'b', 'c', 'd', 'e'], series });
    const [expected, low] = drawn(lines).querySelectorAll('path');
    expect(expected!.getAttribute('d')!.match(/M/g)).toHaveLength(2);
    expect(low!.getAttribute('stroke-dasharray')).not.toBe(expected!.getAttribute('stroke-dasharray'));
    expect([...drawn(lines).querySelectorAll('text')].map((each) => each.textContent)).toContain('low');
  });

  it('draws a chart of nothing', () => {
    expect(() => drawn(figures({ categories: [], series: [] }))).not.toThrow();
  });
});
