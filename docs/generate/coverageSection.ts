import study from '../../tests/coverage/coverage.json' with { type: 'json' };
import { markdownTable } from './validationDoc.ts';

/** How often the 90 % limits hold on generated fleets, beside those of a bare fit, as Markdown. */
export function coverageSection(): string {
  const rows = study.scenarios.flatMap(({ name, failures, horizons, belief, plugIn, bounds }) =>
    horizons.map((months, i) => [
      name,
      belief.fleets,
      `${failures.median} (${failures.least} to ${failures.most})`,
      months,
      belief.coverage[i]!,
      bounds.join(' to '),
      plugIn.coverage[i]!,
    ]),
  );
  const heads = [
    'fleets',
    'how many',
    'failures',
    'months',
    'shown limits hold',
    'wanted',
    'limits of a bare fit hold',
  ];
  return [
    '## How often the limits hold',
    'Made by `npm run coverage` on generated fleets with fixed seeds: the mean chance, under the truth and given the fleet as it stands, that the count falls inside the 90 % limits. A bare fit takes its estimate for the truth, and its limits hold less often than they say.',
    markdownTable(heads, rows),
  ].join('\n\n');
}
