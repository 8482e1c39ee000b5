import type { RemovalMeaning, Whereabouts } from '../service/battery.ts';
import type { Findings } from './findings.ts';
import type { RemovalCause } from './inventory.ts';
import type { Lines } from './lines.ts';
import type { CauseReading } from './removalCauses.ts';
import { newCauses } from './removalCauses.ts';
import { statusMeaning } from './statusWords.ts';

/** The removal causes of a sheet's rows. */
export type RowCauses = {
  readonly meaningOf: (line: number) => RemovalMeaning;
  readonly list: readonly RemovalCause[];
};

/**
 * What each removal means. A row without a cause whose status says failed counts as failed; a text without a known
 * word is reported once, and so is every kind of silence.
 */
export function removalCausesOf(
  lines: Lines,
  where: readonly Whereabouts[],
  named: Readonly<Record<string, RemovalMeaning>>,
  findings: Findings,
): RowCauses {
  const causes = newCauses(named);
  const [texts, statuses, removed] = [lines.text('cause'), lines.text('status'), lines.date('removed').first];
  const doubtful = new Map<string, { readonly by: CauseReading['by']; readonly lines: number[] }>();
  const meanings: RemovalMeaning[] = texts.map((text, line) => {
    if (where[line] === 'inService' || (where[line] === 'inStock' && Number.isNaN(removed[line]!)))
      return 'notSaid';
    const said = text === '' && statusMeaning(statuses[line]!) === 'perhapsRemoved' ? statuses[line]! : text;
    const reading = causes.readingOf(said);
    if (reading.by === 'rest' || reading.meaning === 'notSaid') {
      const like = doubtful.get(said);
      if (like === undefined) doubtful.set(said, { by: reading.by, lines: [line] });
      else like.lines.push(line);
    }
    return reading.meaning;
  });
  for (const [text, { by, lines: like }] of doubtful) report(lines, text, like, by === 'rest', findings);
  return { meaningOf: (line) => meanings[line]!, list: causes.list() };
}

function report(
  lines: Lines,
  text: string,
  like: readonly number[],
  isOther: boolean,
  findings: Findings,
): void {
  const kind = isOther ? 'removal cause not understood' : 'removal cause not said';
  const count = like.length;
  const said = `${count} ${like.length === 1 ? 'removal' : 'removals'}`;
  const given = `${text === '' ? 'nothing' : text} (${said})`;
  findings.add(lines.rows[like[0]!]!, {
    kind,
    column: lines.head('cause'),
    given,
    count,
    group: `removal cause ${text}`,
    subject: { about: 'cause', text },
    setting: 'causes',
  });
}
