import type { StartedWorkbook } from './engine.ts';
import type { Followed } from './turns.ts';

/** The engine gathers changes for a tenth of a second before it begins; after this long nothing will begin. */
const NOTHING_BEGINS_AFTER = 1500;
/** Time in which a calculation begins that a change has started. */
const GATHERING = 250;

/** State of a calculation that was given up for another, by the engine's own number. */
const GIVEN_UP = 1;

/**
 * Makes a change and waits until the calculation that it starts has ended. A change that starts none ends the wait
 * after a while; an aborted signal stops the calculation. `progress` hears how much of it is done.
 */
export async function calculated(
  { api }: StartedWorkbook,
  change: () => void | Promise<void>,
  { signal, progress }: Followed = {},
): Promise<void> {
  const formula = api.getFormula();
  let changed = false;
  let beganAfterwards = false;
  let wake: () => void = () => {};
  const wakeAfter = (time: number): void => {
    clearTimeout(timer);
    timer = setTimeout(() => wake(), time);
  };
  let timer: ReturnType<typeof setTimeout> | undefined;
  const starts = formula.calculationStart(() => {
    beganAfterwards = changed;
    if (changed) clearTimeout(timer);
  });
  const ends = formula.calculationEnd((state) => {
    if (!changed || (state as number) === GIVEN_UP) return;
    // One that began before the last change is followed by another, if by any, within moments.
    if (beganAfterwards) wake();
    else wakeAfter(GATHERING);
  });
  const goesOn = formula.calculationProcessing((stage) => {
    const { totalFormulasToCalculate: all, completedFormulasCount: done } = stage;
    if (changed && all > 0) progress?.(done / all);
  });
  const aborted = (): void => wake();
  signal?.addEventListener('abort', aborted);
  try {
    await change();
    signal?.throwIfAborted();
    changed = true;
    await new Promise<void>((resolve) => {
      wake = resolve;
      wakeAfter(NOTHING_BEGINS_AFTER);
    });
    if (signal?.aborted === true) formula.stopCalculation();
    signal?.throwIfAborted();
  } finally {
    clearTimeout(timer);
    starts.dispose();
    ends.dispose();
    goesOn.dispose();
    signal?.removeEventListener('abort', aborted);
  }
}

/**
 * Has the engine take a turn of the event loop after every formula, in place of every 500, while something is done:
 * for few formulas each of which answers for a whole column.
 */
export async function oneByOne<T>(
  { univer, core, engine }: StartedWorkbook,
  work: () => Promise<T>,
): Promise<T> {
  const settings = univer.__getInjector().get(core.IConfigService);
  const key = engine.ENGINE_FORMULA_PLUGIN_CONFIG_KEY;
  const usual = settings.getConfig<object>(key) ?? {};
  settings.setConfig(key, { ...usual, intervalCount: 1 });
  try {
    return await work();
  } finally {
    settings.setConfig(key, usual);
  }
}
