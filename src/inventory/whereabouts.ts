import type { Whereabouts } from '../service/battery.ts';
import type { Dates } from './dateFindings.ts';
import { saysSomething } from './dateFindings.ts';
import type { FindingKind } from './findingKinds.ts';
import type { Findings } from './findings.ts';
import type { Field } from './fields.ts';
import type { Lines } from './lines.ts';
import type { StatusMeaning } from './statusWords.ts';
import { statusMeaning } from './statusWords.ts';

/** Where each row's battery is, from its status, dates and places together. */
export type Wheres = {
  readonly where: readonly Whereabouts[];
  /** 1 where the row says that its vehicle stands parked. */
  readonly parked: Uint8Array;
};

/** Where each row's battery is at as-of. A removal date decides before a status; what disagrees is a finding. */
export function whereabouts(lines: Lines, dates: Dates, findings: Findings): Wheres {
  const meanings = new Map<string, StatusMeaning>();
  const parked = new Uint8Array(lines.count);
  const status = lines.text('status');
  const where = status.map((text, line) => {
    const known = meanings.get(text);
    const meaning = known ?? statusMeaning(text);
    if (known === undefined) meanings.set(text, meaning);
    if (meaning === 'unknown') note(lines, line, 'status not understood', text, findings, `status ${text}`);
    if (meaning === 'parked') parked[line] = 1;
    return whereIs(lines, dates, line, meaning, findings);
  });
  return { where, parked };
}

function note(
  lines: Lines,
  line: number,
  kind: FindingKind,
  given: string,
  findings: Findings,
  group?: string,
): void {
  const found = { kind, column: lines.head('status'), given };
  findings.add(lines.rows[line]!, group === undefined ? found : { ...found, group });
}

function whereIs(
  lines: Lines,
  dates: Dates,
  line: number,
  meaning: StatusMeaning,
  findings: Findings,
): Whereabouts {
  const status = lines.text('status')[line]!;
  if (!Number.isNaN(dates.removed.first[line]!)) {
    if (meaning === 'inStock') return 'inStock';
    if (meaning === 'inService' || meaning === 'parked')
      note(lines, line, 'status and removal date disagree', `${status}, but a removal date`, findings);
    return 'removed';
  }
  if (dates.removedLater[line] === 1) return 'inService';
  if (meaning === 'removed' || (meaning === 'perhapsRemoved' && lines.at.has('removed'))) {
    note(lines, line, 'removed, date missing', status, findings);
    return 'removed';
  }
  if (saysSomething(lines, line, 'removed')) return removedSomeDay(lines, line, findings);
  if (meaning === 'inService' || meaning === 'parked') return 'inService';
  return meaning === 'inStock' ? inStock(lines, dates, line, findings) : byPlaces(lines, line, findings);
}

// The removal column is filled and can't be read: it is out all the same.
function removedSomeDay(lines: Lines, line: number, findings: Findings): Whereabouts {
  const found = {
    kind: 'removed, date missing',
    column: lines.head('removed'),
    given: String(lines.cell(line, 'removed')),
  } as const;
  findings.add(lines.rows[line]!, found);
  return 'removed';
}

function inStock(lines: Lines, dates: Dates, line: number, findings: Findings): Whereabouts {
  if (!Number.isNaN(dates.installed.first[line]!))
    note(lines, line, 'in stock with an installed date', lines.text('status')[line]!, findings);
  return 'inStock';
}

function byPlaces(lines: Lines, line: number, findings: Findings): Whereabouts {
  const says = (field: Field): boolean => saysSomething(lines, line, field);
  if (says('installed') || says('vehicle')) return 'inService';
  if (says('storagePlace')) return 'inStock';
  if (!lines.at.has('vehicle')) return 'inService';
  const column = lines.head('vehicle');
  findings.add(lines.rows[line]!, { kind: 'neither vehicle nor installed', column, given: 'nothing' });
  return 'inStock';
}
