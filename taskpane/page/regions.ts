/** A part of the page that the keyboard can be moved to as a whole. */
export type Region = { readonly element: HTMLElement; readonly focus: () => void };

/** F6 moves on from part to part of the page, Shift+F6 back; from nowhere it begins with the first. */
export function moveBetweenRegions(regions: readonly Region[]): void {
  window.addEventListener(
    'keydown',
    (event) => {
      if (event.key !== 'F6' || event.altKey || event.metaKey) return;
      if (document.querySelector('dialog[open]') !== null) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      nextRegion(regions, event.shiftKey ? -1 : 1).focus();
    },
    true,
  );
}

function nextRegion(regions: readonly Region[], step: 1 | -1): Region {
  const here = regions.findIndex(({ element }) => element.contains(document.activeElement));
  if (here < 0) return regions[0]!;
  return regions[(here + step + regions.length) % regions.length]!;
}

/** Focuses the first thing in a part of the page that takes the keyboard. */
export function focusFirst(element: HTMLElement): void {
  const first = element.querySelector<HTMLElement>(
    'a[href], button:not(:disabled), input:not([hidden]):not(:disabled), select, textarea',
  );
  (first ?? element).focus();
}
