/** A tag of a doc comment with its text, which may go on over several lines. */
export type Tag = { readonly name: string; readonly text: string };

/** The doc comments of a source text, each without its stars: lines as they were written. */
export function docComments(source: string): string[][] {
  return [...source.matchAll(/\/\*\*([^]*?)\*\//g)].map((found) =>
    found[1]!
      .split('\n')
      .map((line) => line.replace(/^\s*\*? ?/, '').trimEnd())
      .filter((line) => line !== ''),
  );
}

/** The tags of a doc comment, in order; the text before the first tag is left out. */
export function tagsOf(comment: readonly string[]): Tag[] {
  const tags: { name: string; text: string }[] = [];
  for (const line of comment) {
    const [, name, text] = /^@(\w+)\s*(.*)$/.exec(line) ?? [];
    if (name !== undefined) tags.push({ name, text: text! });
    else if (tags.length > 0) tags.at(-1)!.text += ` ${line.trim()}`;
  }
  return tags;
}
