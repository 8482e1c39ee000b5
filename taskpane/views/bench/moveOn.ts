/** Everything at which the work stops: a question, a field, a button that ends the step. */
const STOPS = '[data-stop]';

const CONTROL = 'input, select, button, [tabindex]';

/** What of a stop takes the focus: itself, or in a question the answer that is marked, else the first. */
function controlOf(stop: Element): HTMLElement | null {
  if (stop.matches(CONTROL)) return stop as HTMLElement;
  return stop.querySelector<HTMLElement>('input:checked') ?? stop.querySelector<HTMLElement>(CONTROL);
}

const isOpen = (stop: Element): boolean =>
  stop.closest('details:not([open])') === null && !(controlOf(stop) as HTMLButtonElement | null)?.disabled;

/**
 * Puts the focus on the next stop of the bench after an element, once what follows from the last answer is drawn and
 * before the next key: a scanner types faster than a screen is painted.
 */
export function moveOn(from: HTMLElement): void {
  const bench = from.closest('.bench');
  if (bench === null) return;
  queueMicrotask(() => {
    const after = [...bench.querySelectorAll(STOPS)].filter(
      (stop) => isOpen(stop) && from.compareDocumentPosition(stop) & Node.DOCUMENT_POSITION_FOLLOWING,
    );
    const next = after.find((stop) => !from.contains(stop));
    const control = next && controlOf(next);
    control?.focus();
    // What stays from the battery before is replaced by typing, and kept by Enter.
    if (control instanceof HTMLInputElement && control.type === 'text') control.select();
  });
}

/** Puts the focus on the first stop of the bench. */
export function moveToStart(bench: Element | null): void {
  queueMicrotask(() => {
    const first = bench?.querySelector(STOPS);
    if (first) controlOf(first)?.focus();
  });
}
