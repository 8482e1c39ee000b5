import { beforeAll, describe, expect, it } from 'vitest';
import { functions } from '../../functions/list.ts';

type Called = (...given: unknown[]) => unknown[][];
const associated = new Map<string, Called>();

/** The part of Excel's runtime that the association uses, in a window. */
class ExcelError {
  constructor(
    readonly code: string,
    readonly message?: string,
  ) {}
}

beforeAll(async () => {
  Object.assign(window, {
    CustomFunctions: { Error: ExcelError, associate: (id: string, run: Called) => associated.set(id, run) },
  });
  await import('../../functions/index.ts');
});

describe('association with Excel', () => {
  it('runs in the window of jest-environment-jsdom', () => {
    expect(navigator.userAgent).toContain('jsdom');
  });

  it('associates every function of the list once, under its id', () => {
    expect([...associated.keys()]).toEqual(functions.map(({ id }) => id));
  });

  it('answers a column, with null for what is left out and an object of Excel behind the arguments', () => {
    const answer = associated.get('STATEOFCHARGE')!([[12.85], [null], [0]], null, null, null, {
      address: 'A1',
    });
    expect(answer).toEqual([[1], [''], ['']]);
  });

  it('turns a problem into an error with its sentence, in its own row', () => {
    const [[error], [good]] = associated.get('STATEOFCHARGE')!([[99], [12.85]], null, null, null) as [
      [ExcelError],
      [number],
    ];
    expect(error).toBeInstanceOf(ExcelError);
    expect(error.code).toBe('#VALUE!');
    expect(error.message).toContain('99');
    expect(good).toBe(1);
  });

  it('hands an incoming error back as the same error', () => {
    const [[error]] = associated.get('STATEOFCHARGE')!([[new ExcelError('#DIV/0!')]], null, null, null) as [
      [ExcelError],
    ];
    expect(error).toBeInstanceOf(ExcelError);
    expect(error.code).toBe('#DIV/0!');
  });
});
