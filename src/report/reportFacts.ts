import type { Day } from '../basics/calendar.ts';
import type { Finding, RecordStart, RowCounts } from '../inventory/inventory.ts';
import type { Plan } from '../planning/plan.ts';

/** What a forecast is written from: the plan, and what its reader must know about its making. */
export type ReportFacts = {
  readonly plan: Plan;
  readonly asOf: Day;
  /** Tool and version. */
  readonly madeBy: string;
  readonly fileName: string;
  /** SHA-256 of the source file. */
  readonly fileHash: string;
  readonly tab: string;
  readonly rows: RowCounts;
  readonly leftOutReasons: Readonly<Record<string, number>>;
  readonly recordStart: RecordStart;
  readonly toCheck: readonly Finding[];
  /** Further sentences of the reading. */
  readonly notes: readonly string[];
};
