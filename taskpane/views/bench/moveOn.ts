/** Everything at which the work stops: a question, a field, a button that ends the step. */
const STOPS = '[data-stop]';

const CONTROL = 'input, select, button';

/** What of a stop takes the focus: itself, or in a question the answer that is marked, else the first. */
function controlOf(stop: Element): HTMLElement | null {
  if (stop.matches(CONTROL)) return stop as HTMLElement;
  return stop.querySelector<HTMLElement>(`input:checked, ${CONTROL}`) ?? null;
}

/** Puts the focus on the next stop of the bench after an element; once the page has drawn what follows from it. */
export function moveOn(from: HTMLElement): void {
  const bench = from.closest('.bench');
  if (bench === null) return;
  requestAnimationFrame(() => {
    const stops = [...bench.querySelectorAll(STOPS)].filter(
      (stop) => !(controlOf(stop) as HTMLButtonElement)?.disabled,
    );
    const here = stops.findIndex((stop) => stop.contains(from));
    const next = stops[here + 1];
    if (next !== undefined) controlOf(next)?.focus();
  });
}

/** Puts the focus on the first stop of the bench. */
export function moveToStart(bench: Element | null): void {
  requestAnimationFrame(() => {
    const first = bench?.querySelector(STOPS);
    if (first) controlOf(first)?.focus();
  });
}
