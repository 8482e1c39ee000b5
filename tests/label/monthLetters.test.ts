import { describe, expect, it } from 'vitest';
import { dayParts } from '../../src/basics/calendar.ts';
import { manufactureDate } from '../../src/label/manufactureDate.ts';
import { AS_OF, refusal, valueOf } from './sayings.ts';

// Two lists of month letters are in print: A to M without the I, and A to L with it. They agree up to August only.
const month = (letter: string, layout: string): number =>
  dayParts(valueOf(manufactureDate(`${letter}4`, AS_OF, layout))).month;

describe('trap: two lists of month letters', () => {
  it('agree from January to August', () => {
    for (const letter of 'ABCDEFGH') expect(month(letter, 'Ay')).toBe(month(letter, 'a12y'));
  });

  it('differ from September on: each layout keeps to its own', () => {
    expect([...'JKLM'].map((letter) => month(letter, 'Ay'))).toEqual([9, 10, 11, 12]);
    expect([...'IJKL'].map((letter) => month(letter, 'a12y'))).toEqual([9, 10, 11, 12]);
  });

  it('never lets one list help out the other', () => {
    expect(refusal(manufactureDate('I4', AS_OF, 'Ay'))).toBe('codeLetter');
    expect(refusal(manufactureDate('M4', AS_OF, 'a12y'))).toBe('codeLetter');
  });
});
