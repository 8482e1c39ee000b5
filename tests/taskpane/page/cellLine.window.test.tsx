import { signal } from '@preact/signals';
import { render } from 'preact';
import { afterEach, beforeEach, expect, it } from 'vitest';
import type { CellDescription } from '../../../taskpane/host/workbook/describing.ts';
import { CellLine } from '../../../taskpane/page/cellLine.tsx';
import type { PageState } from '../../../taskpane/page/pageState.ts';

let place: HTMLElement;
beforeEach(() => {
  place = document.createElement('div');
  document.body.append(place);
});
afterEach(() => {
  render(null, place);
});

function lineOf(cell: CellDescription): string {
  const page = { cell: signal<CellDescription | undefined>(cell) } as unknown as PageState;
  render(<CellLine page={page} />, place);
  return place.textContent ?? '';
}

it('an error of the grid itself is told in words too', () => {
  expect(lineOf({ address: 'B4', shown: '#SPILL!', formula: '=CRANK.STATEOFCHARGE(A4:A6)' })).toContain(
    'because: the answer has no room',
  );
  expect(lineOf({ address: 'B5', shown: '#NAME?', formula: '=CRANK.STATEOFCHARG(12)' })).toContain(
    'because: a function or a name in the formula is not known',
  );
});

it('an error with a sentence of its own keeps that', () => {
  const line = lineOf({ address: 'B4', shown: '#NAME?', sentence: 'volts must be a number' });
  expect(line).toContain('because: volts must be a number');
  expect(line).not.toContain('not known');
});

it('a cell without an error gives no reason', () => {
  expect(lineOf({ address: 'A1', shown: 'Serviceable' })).toBe('A1shows Serviceable');
});
