import type { HeadlessWorkbook } from './workbookHeadless.ts';

type Piece = string | { readonly getChildren: () => readonly Piece[] };

/** Whether a text that begins with "=" is a formula that can be read. */
export function isFormula({ api, engine }: HeadlessWorkbook, formula: string): boolean {
  if (formula.slice(1).trim() === '') return false;
  const tree: unknown = api.getFormula().lexerTreeBuilder.treeBuilder(formula);
  return typeof tree === 'string' ? !engine.ERROR_TYPE_SET.has(tree as never) : isReadable(tree as Piece);
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
