import type { ReadonlySignal, Signal } from '@preact/signals';
import { computed, signal } from '@preact/signals';
import type { Day } from '../src/basics/calendar.ts';
import type { Outcome } from '../src/basics/outcome.ts';
import type { Problem } from '../src/basics/outcome.ts';
import type { GivenSettings, Settings } from '../src/inventory/settings.ts';
import type { Unmatched } from '../src/inventory/unmatchedSettings.ts';
import { DEFAULT_SETTINGS, settingsFrom } from '../src/inventory/settings.ts';
import type { BenchState } from './bench/benchState.ts';
import { newBench } from './bench/benchState.ts';
import type { Computing } from './computing/computing.ts';
import type { LifeShown } from './computing/lifeAnswer.ts';
import type { ShownPlan } from './computing/planAnswer.ts';
import type { Reading } from './computing/readAnswer.ts';
import type { HostCell, SheetBlock, SheetHost, WorkbookInfo } from './host/sheetHost.ts';

/** The four views, in the order of their links. */
export const VIEWS = ['inventory', 'bench', 'life', 'plan'] as const;
export type View = (typeof VIEWS)[number];

/** Where what the pane writes goes: into this workbook, into a copy of it, or into workbooks of its own. */
export type Home = 'here' | 'copy' | 'own';

/** The inventory's place: a table, or a block of a sheet. */
export type Where = SheetBlock & {
  readonly table?: string;
  /** False where the user chose the very block; else it follows what the sheet holds. */
  readonly wholeSheet?: false;
};

/** Something under way that can be given up. */
export type Underway = {
  readonly what: string;
  readonly share: number | undefined;
  readonly giveUp: () => void;
};

/** A question with its answers, the first of which is the safe one. */
export type Question = {
  readonly text: string;
  readonly answers: readonly string[];
  /** Hears which answer was chosen, counted from 0. */
  readonly answered: (answer: number) => void;
};

/** Settings that were taken from somewhere. */
export type Taken = { readonly from: string; readonly columns: readonly Unmatched[] };

/** What the pane has to say: done, or what is wrong and what to do. */
export type Notice = { readonly kind: 'done' | 'problem'; readonly text: string };

/** What the machine around the pane does for it. */
export type Surroundings = {
  readonly host: SheetHost;
  readonly computing: Computing;
  /** Tool and version, for the heads of sheets. */
  readonly madeBy: string;
  readonly today: Day;
  /** How much of the day has passed, 0 to 1, so that a charge after a test of the same day counts as after it. */
  readonly timeOfDay: () => number;
  /** Gives the user a file. */
  readonly saveFile: (name: string, bytes: Uint8Array | string) => void;
  /** The rows of a sheet of another workbook file; undefined where it has no such sheet. */
  readonly sheetOfFile?: (
    file: { readonly name: string; readonly bytes: Uint8Array },
    sheet: string,
  ) => Promise<Outcome<readonly (readonly HostCell[])[] | undefined>>;
};

/** The pane's state: what the user has said, what has been read and computed from it, and what is going on. */
export type Session = Surroundings & {
  readonly view: Signal<View>;
  readonly asOf: Signal<Day>;
  /** What the user has said, as it is kept in the settings file; everything else is default. */
  readonly given: Signal<GivenSettings>;
  readonly settings: ReadonlySignal<Outcome<Settings>>;
  readonly home: Signal<Home | undefined>;
  /** What hears the answer while the user is asked where to write; undefined = declined. */
  readonly homeAsked: Signal<((home: Home | undefined) => void) | undefined>;
  /** Something that is asked before the work goes on. */
  readonly question: Signal<Question | undefined>;
  /** Where the settings were taken from, and which of their columns this inventory does not have. */
  readonly taken: Signal<Taken | undefined>;
  readonly workbook: Signal<WorkbookInfo | undefined>;
  readonly where: Signal<Where | undefined>;
  readonly selected: Signal<SheetBlock | undefined>;
  readonly reading: Signal<Reading | undefined>;
  readonly plan: Signal<ShownPlan | undefined>;
  readonly life: Signal<LifeShown | undefined>;
  /** The number of vehicles has long been the same: the user says so. */
  readonly steady: Signal<boolean>;
  readonly bench: BenchState;
  /** A plan kept beside the next one, with the name that the user gave it. */
  readonly kept: Signal<{ readonly name: string; readonly plan: ShownPlan } | undefined>;
  /** Why there is no reading or no plan. */
  readonly readProblem: Signal<Problem | undefined>;
  readonly planProblem: Signal<Problem | undefined>;
  readonly underway: Signal<Underway | undefined>;
  readonly notice: Signal<Notice | undefined>;
};

/** A session in which nothing has been opened or said yet. */
export function newSession(surroundings: Surroundings): Session {
  const given = signal<GivenSettings>({});
  return {
    ...surroundings,
    view: signal<View>('inventory'),
    asOf: signal(surroundings.today),
    given,
    settings: computed(() => settingsFrom(given.value)),
    home: signal<Home | undefined>(undefined),
    homeAsked: signal<((home: Home | undefined) => void) | undefined>(undefined),
    question: signal<Question | undefined>(undefined),
    taken: signal<Taken | undefined>(undefined),
    workbook: signal<WorkbookInfo | undefined>(undefined),
    where: signal<Where | undefined>(undefined),
    selected: signal<SheetBlock | undefined>(undefined),
    reading: signal<Reading | undefined>(undefined),
    plan: signal<ShownPlan | undefined>(undefined),
    life: signal<LifeShown | undefined>(undefined),
    steady: signal(false),
    bench: newBench(),
    kept: signal<{ name: string; plan: ShownPlan } | undefined>(undefined),
    readProblem: signal<Problem | undefined>(undefined),
    planProblem: signal<Problem | undefined>(undefined),
    underway: signal<Underway | undefined>(undefined),
    notice: signal<Notice | undefined>(undefined),
  };
}

/** The settings in force; those that nobody has changed while what is given can't be used. */
export function settingsInForce({ settings }: Session): Settings {
  return settings.value.ok ? settings.value.value : DEFAULT_SETTINGS;
}
