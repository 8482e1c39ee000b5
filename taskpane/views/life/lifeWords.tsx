import type { Banded, PlanLife } from '../../../src/planning/lifeFigures.ts';
import { WORDS } from '../../text/lifeText.ts';

/** Failures from which on the rule of thumb no longer matters. */
const MANY = 20;

const months = (value: number): string => (value > 999 ? 'more than 999' : value.toFixed(0));
const told = ({ best, low, high }: Banded, shown: (value: number) => string): [string, string, string] => [
  shown(best),
  shown(low),
  shown(high),
];

/** How long batteries last, in words. */
export function LifeWords({ life }: { readonly life: PlanLife }) {
  const { halfGone, tenthGone, wearOut, failures, lives, ifNotSaidFailed } = life;
  return (
    <section aria-labelledby="lifeWords">
      <h3 id="lifeWords">{WORDS.heading}</h3>
      <p class="lead">
        {WORDS.half(...told(halfGone, months))} {WORDS.tenth(...told(tenthGone, months))}
      </p>
      <p>{WORDS.wearOut(...told(wearOut, (value) => value.toFixed(1)))}</p>
      <p>
        {WORDS.rests(failures, lives)} {restsOn(failures)}
      </p>
      {ifNotSaidFailed !== undefined && differs(ifNotSaidFailed.median, halfGone.best) && (
        <p>{WORDS.notSaid(months(halfGone.best), months(ifNotSaidFailed.median))}</p>
      )}
    </section>
  );
}

function restsOn(failures: number): string {
  if (failures === 0) return WORDS.none;
  return failures < MANY ? WORDS.few : WORDS.many;
}

/** Whether two answers are more than a tenth apart. */
const differs = (one: number, other: number): boolean => Math.abs(one / other - 1) > 0.1;
