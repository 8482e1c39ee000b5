import type { StartedWorkbook } from './engine.ts';
import { openBook } from './engine.ts';
import { turn } from './turns.ts';

/** One change of the workbook in the engine's own terms. */
export type Mutation = { readonly id: string; readonly params: object };

/** Changes that belong together: kept as one step that the user can undo, or taken back whole. */
export type Steps = {
  /** Makes a change and remembers what takes it back. */
  readonly make: (change: Mutation, inverse: Mutation) => void;
  readonly keep: () => void;
  readonly takeBack: () => Promise<void>;
};

/** An empty list of changes to the workbook that is open. */
function newSteps(started: StartedWorkbook): Steps {
  const [made, inverses]: [Mutation[], Mutation[]] = [[], []];
  const unitID = openBook(started).getId();
  const execute = ({ id, params }: Mutation): void => {
    const done: unknown = started.api.syncExecuteCommand(id, params);
    if (done === false) throw new Error(`the grid refused ${id}`);
  };
  return {
    make: (change, inverse) => {
      inverses.unshift(inverse);
      made.push(change);
      execute(change);
    },
    keep: () => {
      const undoing = started.univer.__getInjector().get(started.core.IUndoRedoService);
      undoing.pushUndoRedo({ unitID, undoMutations: [...inverses], redoMutations: [...made] });
    },
    takeBack: async () => {
      for (const inverse of inverses) {
        execute(inverse);
        await turn();
      }
    },
  };
}

/** Makes changes all or none: what throws or is a problem leaves the workbook as it was. */
export async function allOrNone<T extends { readonly ok: boolean }>(
  started: StartedWorkbook,
  change: (steps: Steps) => Promise<T>,
): Promise<T> {
  const steps = newSteps(started);
  try {
    const outcome = await change(steps);
    if (outcome.ok) steps.keep();
    else await steps.takeBack();
    return outcome;
  } catch (reason) {
    await steps.takeBack();
    throw reason;
  }
}
