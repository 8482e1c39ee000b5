import type { BaseValueObject } from '@univerjs/engine-formula';
import type { Engine } from './functions.ts';

type Create = (raw: string | number | boolean, asTyped?: boolean) => BaseValueObject;

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:E[+-]?\d+)?$/i;

// The engine's modules live as long as the process, and engines may be started more than once.
const mended = new WeakSet<object>();

/**
 * Mends how the engine reads what is written in a formula itself. It takes a number such as 12.60 or 1E3 for text,
 * and cuts {"a,b";"c"} at the comma inside the quotes. Cells go another way and stay as they are.
 */
export function patchLiterals(engine: Engine): void {
  const factory = engine.ValueObjectFactory as unknown as { create: Create };
  if (mended.has(factory)) return;
  mended.add(factory);
  const engineCreate = factory.create.bind(factory);
  factory.create = (raw, asTyped) => {
    // Only where a formula's own text is read does the engine say whether it is to be taken as typed.
    if (typeof raw !== 'string' || asTyped === undefined) return engineCreate(raw, asTyped);
    const written = raw.trim();
    if (/^\{.*\}$/s.test(written))
      return arrayOf(written, (piece) => literal(engine, engineCreate, piece), engine);
    return asTyped ? literal(engine, engineCreate, raw) : engineCreate(raw, asTyped);
  };
}

function literal(engine: Engine, engineCreate: Create, raw: string): BaseValueObject {
  const written = raw.trim();
  return NUMBER.test(written) ? engine.NumberValueObject.create(Number(written)) : engineCreate(raw, true);
}

/** An array constant: rows parted by semicolons, cells by commas, both only outside quotes. */
function arrayOf(written: string, cell: (piece: string) => BaseValueObject, engine: Engine): BaseValueObject {
  const rows = parted(written.slice(1, -1), ';').map((row) =>
    parted(row, ',').map((piece) => cell(piece.trim())),
  );
  const columnCount = Math.max(...rows.map((row) => row.length));
  const missing = columnCount - Math.min(...rows.map((row) => row.length));
  if (missing > 0) return engine.ErrorValueObject.create(engine.ErrorType.VALUE);
  const place = { unitId: '', sheetId: '', row: -1, column: -1 };
  return engine.ArrayValueObject.create({
    calculateValueList: rows,
    rowCount: rows.length,
    columnCount,
    ...place,
  });
}

/** Cuts a text at each separator that stands outside quotes. */
function parted(text: string, separator: ',' | ';'): string[] {
  const pieces: string[] = [];
  let quoted = false;
  let start = 0;
  for (let at = 0; at < text.length; at += 1) {
    if (text[at] === '"') quoted = !quoted;
    if (text[at] !== separator || quoted) continue;
    pieces.push(text.slice(start, at));
    start = at + 1;
  }
  return [...pieces, text.slice(start)];
}
