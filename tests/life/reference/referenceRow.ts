/** A value computed or published elsewhere, beside ours. docs/validation.md may print the same rows. */
export type ReferenceRow = {
  /** The case it belongs to. */
  readonly id: string;
  readonly title: string;
  /** A key of docs/sources.md for where the lives were published, "madeUp", or "computed here". */
  readonly source: string;
  readonly quantity: string;
  /** Undefined = the quantity is not defined there. */
  readonly expected: number | undefined;
  /** Largest difference that still agrees. */
  readonly within: number;
  readonly ours: () => number | undefined;
  /** We knowingly don't reproduce it, and why. */
  readonly knownMiss?: string;
};

/** Whether our value agrees with the reference. */
export function rowAgrees({ expected, within, ours }: ReferenceRow): boolean {
  const value = ours();
  if (expected === undefined || value === undefined) return expected === value;
  return Math.abs(value - expected) <= within;
}

/** A reference figure as the files hold it: null = not defined. */
export type Figure = readonly [value: number | null, within: number];

/** A value that is computed once, when first asked for. */
export function once<T>(compute: () => T): () => T {
  let known: { value: T } | undefined;
  return () => (known ??= { value: compute() }).value;
}

/** Rows for named figures that one computation answers. */
export function figureRows(
  head: Pick<ReferenceRow, 'id' | 'title' | 'source'>,
  figures: Readonly<Record<string, Figure>>,
  figureOf: (quantity: string) => number | undefined,
): ReferenceRow[] {
  return Object.entries(figures).map(([quantity, [value, within]]) => ({
    ...head,
    quantity,
    expected: value ?? undefined,
    within,
    ours: () => figureOf(quantity),
  }));
}
