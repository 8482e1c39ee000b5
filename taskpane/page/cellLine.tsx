import type { PageState } from './pageState.ts';
import { CELL_LINE } from './pageText.ts';

/** The active cell in words: where, what it shows, the formula behind it, and why where it shows an error. */
export function CellLine({ page }: { readonly page: PageState }) {
  const cell = page.cell.value;
  const because = cell && (cell.sentence ?? CELL_LINE.gridErrors[cell.shown]);
  return (
    <section class="cellLine" aria-label={CELL_LINE.label}>
      {cell !== undefined && (
        <>
          <strong>{cell.address}</strong>
          {cell.shown === '' ? (
            <span>{CELL_LINE.isEmpty}</span>
          ) : (
            <span>
              {CELL_LINE.value} <b>{cell.shown}</b>
            </span>
          )}
          {cell.formula !== undefined && (
            <span>
              {CELL_LINE.formula} <code>{cell.formula}</code>
            </span>
          )}
          {cell.answerOf !== undefined && (
            <span>
              {CELL_LINE.answerOf} {cell.answerOf}
            </span>
          )}
          {because !== undefined && (
            <span class="because">
              {CELL_LINE.error}: {because}
            </span>
          )}
        </>
      )}
    </section>
  );
}
