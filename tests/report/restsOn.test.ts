import { describe, expect, it } from 'vitest';
import { restsOnSentence } from '../../src/report/methodSentences.ts';
import { reportFacts } from './reportFacts.ts';

const { plan } = reportFacts({ years: 1 });
const said = (failures: number, lives: number): string =>
  restsOnSentence({ ...plan, life: { ...plan.life, failures, lives } });

describe('what the figures rest on', () => {
  it('is said without counting to none, and in the singular for one', () => {
    expect(said(0, 0)).toMatch(/: no failure is on record\.$/);
    expect(said(1, 1)).toMatch(/: there is only 1 failure among 1 life on record\.$/);
    expect(said(3, 43)).toMatch(/: there are only 3 failures among 43 lives on record\.$/);
  });
});
