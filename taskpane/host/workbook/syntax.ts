import type { HeadlessWorkbook } from './headlessWorkbook.ts';

type Piece = string | { readonly getChildren: () => readonly Piece[] };

/** Whether a text that begins with "=" is a formula that can be read. */
export function isFormula({ engine }: HeadlessWorkbook, formula: string): boolean {
  if (formula.slice(1).trim() === '') return false;
  const parser = new engine.LexerTreeBuilder();
  const tree: unknown = parser.treeBuilder(formula);
  const readable =
    typeof tree === 'string' ? !engine.ERROR_TYPE_SET.has(tree as never) : isReadable(tree as Piece);
  forgetParsed(parser);
  return readable;
}

/**
 * The engine remembers every formula that it has parsed, with the names of the workbook put in: what was parsed
 * without them, or with another workbook's, must be forgotten before the next one is opened.
 */
export function forgetParsed(parser: { readonly dispose: () => void }): void {
  parser.dispose();
}

// The engine parses more than it can read: two values side by side become the name of nothing.
function isReadable(piece: Piece): boolean {
  return typeof piece === 'string' ? isOneValue(piece.trim()) : piece.getChildren().every(isReadable);
}

const QUOTED = /'(?:[^']|'')*'|\[(?:[^[\]]|\[[^\]]*\])*\]/g;

/** One number, text, name, reference or array constant; an empty piece is an argument that was left out. */
function isOneValue(piece: string): boolean {
  if (/^(?:\{.*\}|".*")$/s.test(piece)) return true;
  const bare = piece.replace(QUOTED, '');
  return !/[\s;,?]/.test(bare) && !(/^\d/.test(bare) && Number.isNaN(Number(bare)));
}
