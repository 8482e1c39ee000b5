/**
 * Hears the first click only: a question can come up under the pointer between the two clicks of a double click, and the
 * second must not answer what nobody has read.
 */
export const firstClick =
  (answer: () => void) =>
  ({ detail }: { readonly detail: number }): void => {
    if (detail < 2) answer();
  };
