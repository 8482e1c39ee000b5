import { attribute, elements, elementsIn, openingTag, prefixOf, prefixed, withAttribute } from './xml.ts';

/** A run of columns that are described alike. */
type Run = { readonly first: number; readonly last: number; readonly element: string };

function runsOf(before: string): Run[] {
  const prefix = prefixOf(before);
  const list = elements(`${prefix}cols`).exec(before)?.[0] ?? '';
  return elementsIn(list.slice(openingTag(list).length), `${prefix}col`).map((element) => ({
    first: Number(attribute(element, 'min')) - 1,
    last: Number(attribute(element, 'max')) - 1,
    element,
  }));
}

/** The cell style that an empty cell of each column has. */
export function columnStyles(before: string): (column: number) => number {
  const runs = runsOf(before).map((run) => ({ ...run, style: Number(attribute(run.element, 'style') ?? 0) }));
  return (column) => runs.find(({ first, last }) => column >= first && column <= last)?.style ?? 0;
}

/** What stands before a sheet's rows, with widths (in characters) of some columns set. */
export function withWidths(before: string, widths: ReadonlyMap<number, number>): string {
  if (widths.size === 0) return before;
  const prefix = prefixOf(before);
  const runs = [...widths].reduce(withWidth, runsOf(before)).sort((a, b) => a.first - b.first);
  const made = runs.map(({ first, last, element }) =>
    prefixed(withAttribute(withAttribute(element, 'min', first + 1), 'max', last + 1), prefix),
  );
  const list = `<${prefix}cols>${made.join('')}</${prefix}cols>`;
  const there = elements(`${prefix}cols`).exec(before)?.[0];
  if (there !== undefined) return before.replace(there, () => list);
  const at = before.lastIndexOf(`<${prefix}sheetData`);
  return before.slice(0, at) + list + before.slice(at);
}

/** Takes one column out of the run that it is in and sets its width. */
function withWidth(runs: readonly Run[], [column, width]: readonly [number, number]): Run[] {
  const own = runs.find(({ first, last }) => column >= first && column <= last);
  const element = withAttribute(withAttribute(own?.element ?? '<col/>', 'width', width), 'customWidth', 1);
  const split =
    own === undefined
      ? []
      : [
          { ...own, last: column - 1 },
          { ...own, first: column + 1 },
        ];
  return [
    ...runs.filter((run) => run !== own),
    ...split.filter(({ first, last }) => first <= last),
    { first: column, last: column, element },
  ];
}
