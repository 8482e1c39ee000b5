import { describe, expect, it } from 'vitest';
import * as core from '../../src/index.ts';
import { sourceFiles, textOf } from './sourceFiles.ts';

type Example = { readonly path: string; readonly expression: string; readonly printed: string };

const examples: Example[] = sourceFiles('src').flatMap((path) =>
  [...textOf(path).matchAll(/^\s*\*\s*@example\s+(.+?)\s+\/\/\s+(.+?)\s*(?:\*\/)?$/gm)].map((found) => ({
    path,
    expression: found[1]!,
    printed: found[2]!,
  })),
);

const written = sourceFiles('src').reduce(
  (sum, path) => sum + [...textOf(path).matchAll(/^\s*\*\s*@example\b/gm)].length,
  0,
);

/** Runs an expression with the core's exports in scope, as a reader of the docstring would. */
function run(expression: string): unknown {
  const names = Object.keys(core);
  const values = Object.values(core);
  // Docstrings are our own text; running them is what keeps them true.
  const value: unknown = new Function(...names, `return (${expression});`)(...values);
  return isValue(value) ? value.value : value;
}

const isValue = (outcome: unknown): outcome is { value: unknown } =>
  typeof outcome === 'object' &&
  outcome !== null &&
  'ok' in outcome &&
  outcome.ok === true &&
  'value' in outcome;

function agreesWith(value: unknown, printed: string): boolean {
  if (typeof value === 'number' && /^-?[\d.]+$/.test(printed)) {
    return value.toFixed(printed.split('.')[1]?.length ?? 0) === printed || value === Number(printed);
  }
  const text = JSON.stringify(value);
  return text === printed || text === JSON.stringify(parsed(printed));
}

function parsed(printed: string): unknown {
  try {
    return new Function(`return (${printed});`)();
  } catch {
    return printed;
  }
}

describe('examples in docstrings of the core', () => {
  it('every example has the form "expression // answer"', () => {
    expect(examples).toHaveLength(written);
    expect(written).toBeGreaterThan(30);
  });

  it.each(examples)('$path: $expression', ({ expression, printed }) => {
    const value = run(expression);
    expect(agreesWith(value, printed), `answers ${JSON.stringify(value)}, printed ${printed}`).toBe(true);
  });
});
