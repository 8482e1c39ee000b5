import { referenceCases } from '../../tests/life/reference/referenceRows.ts';
import { referenceTable, shownFigure } from './referenceTable.ts';
import { markdownTable } from './validationDoc.ts';

/** Life statistics case by case: how many values were compared, one of them, and the largest difference. */
export function lifeReferenceSection(): string {
  const misses = referenceCases.flat().filter((row) => row.knownMiss !== undefined);
  return [
    '## Life statistics against other programs',
    'Samples of lives, most of them published, worked out by separate programs: a general statistics system, and 40-digit arithmetic. Each line is one case; it shows how many values were compared, one of them, and the largest difference as a share of what the case allows (a millionth of the value for most estimates). The values themselves stand in `tests/life/reference`.',
    referenceTable(referenceCases, 'lives from'),
    '### Not reproduced',
    markdownTable(
      ['case', 'value', 'reference', 'ours', 'why'],
      misses.map((row) => [
        row.id,
        row.quantity,
        shownFigure(row.expected),
        shownFigure(row.ours()),
        row.knownMiss!,
      ]),
    ),
  ].join('\n\n');
}
