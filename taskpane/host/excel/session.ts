import type { Outcome } from '../../../src/basics/outcome.ts';
import type { Work } from '../sheetHost.ts';
import { excelProblem, leftBehind } from './problems.ts';
import { hasExcelApi, requirementsMet } from './requirements.ts';

/** Does something in Excel; waits while a cell is being edited; what Excel refuses becomes a problem. */
export async function inExcel<T>(
  body: (context: Excel.RequestContext) => Promise<Outcome<T>>,
): Promise<Outcome<T>> {
  const met = requirementsMet();
  if (!met.ok) return met;
  try {
    return await Excel.run({ delayForCellEdit: true }, async (context) => {
      hearAgain(context);
      return await body(context);
    });
  } catch (error) {
    return excelProblem(error);
  }
}

// Events stay silenced where the connection was gone before they could be switched on again.
let areEventsOff = false;

function hearAgain({ runtime }: Excel.RequestContext): void {
  if (areEventsOff) runtime.enableEvents = true;
  areEventsOff = false;
}

/** A change that is made whole or not at all. */
export type Change<T> = {
  readonly work: Work | undefined;
  /** Writes; a problem or a throw means that it is to be taken back. */
  readonly make: (context: Excel.RequestContext, pending: Pending) => Promise<Outcome<T>>;
  /** Takes back what was made so far, in a request of its own. */
  readonly takeBack: (context: Excel.RequestContext) => Promise<void>;
  /** What a user has to look at where that fails too; nothing while nothing has been written. */
  readonly what: () => string;
  /** Whether the user can undo it in one step, where the program can do that. */
  readonly undoneAtOnce?: true | undefined;
};

/** Makes a change with events silenced; what fails or is given up leaves the workbook as it was. */
export async function allOrNone<T>(change: Change<T>): Promise<Outcome<T>> {
  const met = requirementsMet();
  if (!met.ok) return met;
  const mergeUndoGroup = change.undoneAtOnce === true && hasExcelApi('1.19');
  try {
    const made = await Excel.run({ delayForCellEdit: true, mergeUndoGroup }, (context) =>
      silently(context, change),
    );
    return made.ok || change.what() === '' ? made : ((await takenBack(change, undefined)) ?? made);
  } catch (error) {
    const failed = await takenBack(change, error);
    if (failed !== undefined) return failed;
    // A program that can't group one of the members does the same without a group.
    const ungrouped = { ...change, undoneAtOnce: undefined };
    return isUndoRefused(error) ? allOrNone(ungrouped) : excelProblem(error);
  }
}

const isUndoRefused = (error: unknown): boolean =>
  error instanceof OfficeExtension.Error && error.code === 'UndoNotSupported';

async function takenBack<T>(change: Change<T>, cause: unknown): Promise<Outcome<T> | undefined> {
  try {
    await Excel.run({ delayForCellEdit: true }, async (context) => {
      context.runtime.enableEvents = true;
      await change.takeBack(context);
    });
    return undefined;
  } catch {
    areEventsOff = true;
    // Where nothing was written there is nothing to look at.
    return change.what() === '' ? undefined : leftBehind(cause, change.what());
  }
}

async function silently<T>(context: Excel.RequestContext, change: Change<T>): Promise<Outcome<T>> {
  const pending = pendingWrites(context, change.work);
  context.runtime.enableEvents = false;
  try {
    return await change.make(context, pending);
  } finally {
    // Goes over with the last request; after a failure takenBack does it in a request of its own.
    context.runtime.enableEvents = true;
  }
}

/** Writes that wait for the next sync. */
export type Pending = {
  /** Makes room for a write of so many bytes: what waits is sent first where both would be too much. */
  readonly spend: (bytes: number) => Promise<void>;
  /** Sends what waits. */
  readonly send: () => Promise<void>;
  /** Tells how many bytes there are in all, for the progress. */
  readonly expect: (bytes: number) => void;
};

/** A request above 5 MB is refused; two leave room for what surrounds the values. */
const MOST_BYTES = 1_900_000;

/** Collects writes until a request is full. */
export function pendingWrites(context: Excel.RequestContext, work: Work | undefined): Pending {
  let [waiting, sent, expected, started] = [0, 0, 0, false];
  const send = async (): Promise<void> => {
    await context.sync();
    sent += waiting;
    [waiting, started] = [0, false];
    work?.progress(expected === 0 ? 1 : Math.min(1, sent / expected));
    work?.signal.throwIfAborted();
  };
  const spend = async (bytes: number): Promise<void> => {
    if (waiting > 0 && waiting + bytes > MOST_BYTES) await send();
    if (!started) suspend(context);
    started = true;
    waiting += bytes;
  };
  return { spend, send, expect: (bytes) => void (expected += bytes) };
}

function suspend({ application }: Excel.RequestContext): void {
  application.suspendApiCalculationUntilNextSync();
  application.suspendScreenUpdatingUntilNextSync();
}
