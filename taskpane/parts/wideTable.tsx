import { useId } from 'preact/hooks';

/** A column: its head, and whether its cells are numbers. */
export type TableHead = { readonly text: string; readonly number?: boolean };

/** A table that scrolls by itself where it is wider than the pane; the region takes the focus for scrolling by key. */
export function WideTable({
  caption,
  heads,
  rows,
  total,
  note,
}: {
  readonly caption: string;
  readonly heads: readonly TableHead[];
  /** The first cell of each row names it. */
  readonly rows: readonly (readonly string[])[];
  readonly total?: readonly string[];
  readonly note?: string;
}) {
  const id = useId();
  return (
    <>
      <div class="wideTable" role="region" aria-labelledby={id} tabIndex={0}>
        <table>
          <caption id={id}>{caption}</caption>
          <thead>
            <tr>
              {heads.map(({ text, number }) => (
                <th key={text} scope="col" class={number ? 'number' : undefined}>
                  {text}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((cells, index) => (
              <Row key={`${index} ${cells[0]}`} cells={cells} heads={heads} />
            ))}
          </tbody>
          {total && (
            <tfoot>
              <Row cells={total} heads={heads} />
            </tfoot>
          )}
        </table>
      </div>
      {note && <p class="note">{note}</p>}
    </>
  );
}

function Row({ cells, heads }: { readonly cells: readonly string[]; readonly heads: readonly TableHead[] }) {
  return (
    <tr>
      {cells.map((cell, column) => {
        const look = heads[column]?.number ? 'number' : undefined;
        return column === 0 ? (
          <th key={column} scope="row" class={look}>
            {cell}
          </th>
        ) : (
          <td key={column} class={look}>
            {cell}
          </td>
        );
      })}
    </tr>
  );
}
