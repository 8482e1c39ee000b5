import { useEffect, useState } from 'preact/hooks';
import { PAGE } from './pageText.ts';

const LEAST = 320;
const MOST = 900;
const STEP = 20;
const FIRST = 400;

/** The line between workbook and pane: dragged, or moved with the arrow keys, Home and End. */
export function Splitter() {
  const [width, setWidth] = useState(FIRST);
  useEffect(() => document.documentElement.style.setProperty('--paneWidth', `${width}px`), [width]);
  const move = (to: number): void => setWidth(Math.min(MOST, Math.max(LEAST, Math.round(to))));
  return (
    <div
      class="splitter"
      role="separator"
      tabIndex={0}
      aria-orientation="vertical"
      aria-label={PAGE.splitter}
      aria-controls="pane"
      aria-valuemin={LEAST}
      aria-valuemax={MOST}
      aria-valuenow={width}
      aria-valuetext={`${width} pixels`}
      onKeyDown={(event) => {
        const to = widthAfter(event.key, width);
        if (to === undefined) return;
        event.preventDefault();
        move(to);
      }}
      onPointerDown={(event) => event.currentTarget.setPointerCapture(event.pointerId)}
      onPointerMove={(event) => {
        if (event.currentTarget.hasPointerCapture(event.pointerId)) move(window.innerWidth - event.clientX);
      }}
    />
  );
}

/** The pane stands on the right: the arrow to the left makes it wider. */
function widthAfter(key: string, width: number): number | undefined {
  if (key === 'ArrowLeft') return width + STEP;
  if (key === 'ArrowRight') return width - STEP;
  if (key === 'Home') return LEAST;
  if (key === 'End') return MOST;
  return undefined;
}
