import type { Day } from '../basics/calendar.ts';
import type { Finding, RecordStart, RowCounts } from '../inventory/inventory.ts';
import type { Settings } from '../inventory/settings.ts';
import type { Plan } from '../planning/plan.ts';
import type { Battery } from '../service/battery.ts';

/** The settings that the sheets themselves follow, beside those of the plan. */
export type ReportSettings = Pick<Settings, 'sites' | 'store' | 'dateShown' | 'liveFormulas'>;

/** What a forecast is written from: the plan, and what its reader must know about its making. */
export type ReportFacts = {
  readonly plan: Plan;
  readonly batteries: readonly Battery[];
  readonly settings: ReportSettings;
  readonly asOf: Day;
  /** Tool and version. */
  readonly madeBy: string;
  readonly fileName: string;
  /** SHA-256 of the source file, or of the rows read where only they are known. */
  readonly fileHash: string;
  readonly hashOf?: 'file' | 'rows';
  readonly tab: string;
  readonly rows: RowCounts;
  readonly leftOutReasons: Readonly<Record<string, number>>;
  readonly recordStart: RecordStart;
  readonly toCheck: readonly Finding[];
  /** Further sentences of the reading. */
  readonly notes: readonly string[];
};
