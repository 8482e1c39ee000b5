import type { Outcome } from '../src/basics/outcome.ts';
import { andThen, answer, problem } from '../src/basics/outcome.ts';
import { lifePosterior } from '../src/life/lifePosterior.ts';
import type { LifeRecord } from '../src/life/lifeRecord.ts';
import { collapseRecords } from '../src/life/lifeRecord.ts';
import type { LifeBelief } from '../src/planning/lattice.ts';
import { asBlock, isBlank, isBlankOrZero, numberFrom } from './cell.ts';

/**
 * What a `life` argument says: two cells are Weibull shape and scale; a block of two or three columns is a
 * removal history (months, failed, ageAtRecordStart), from which the belief is made.
 */
export function lifeBelief(given: unknown): Outcome<LifeBelief> {
  const block = asBlock(given);
  const columns = block[0]?.length ?? 0;
  if (block.length * columns === 2) return knownLife(block.flat());
  if (columns < 2 || columns > 3) {
    return problem('badInput', 'lifeBlockShape', 'life', undefined, {
      more: { rows: block.length, columns },
    });
  }
  return andThen(records(block), (lives) =>
    lives.length === 0 ? problem('notEnoughData', 'noLives', 'life') : lifePosterior(collapseRecords(lives)),
  );
}

function knownLife([shape, scale]: readonly unknown[]): Outcome<LifeBelief> {
  return andThen(within(shape, 'shape', 0.05, 200), (known) =>
    andThen(within(scale, 'scale', 0.01, 100_000), (size) =>
      answer<LifeBelief>({ shape: known, scale: size }),
    ),
  );
}

function within(given: unknown, argument: string, least: number, most: number): Outcome<number> {
  return andThen(numberFrom(given, argument), (value) =>
    value >= least && value <= most
      ? answer(value)
      : problem('outOfRange', 'outOfLimits', argument, value, { limits: [least, most] }),
  );
}

// Rows without months are no lives, as in LIFEFIT.
function records(block: readonly (readonly unknown[])[]): Outcome<LifeRecord[]> {
  const lives: LifeRecord[] = [];
  for (const [index, cells] of block.entries()) {
    if (isBlankOrZero(cells[0])) continue;
    const life = record(cells, index + 1);
    if (!life.ok) return life;
    lives.push(life.value);
  }
  return answer(lives);
}

function record([months, failed, start]: readonly unknown[], row: number): Outcome<LifeRecord> {
  const age = numberFrom(months, `months in row ${row} of life`);
  if (!age.ok) return age;
  const entry = isBlank(start) ? answer(0) : numberFrom(start, `ageAtRecordStart in row ${row} of life`);
  if (!entry.ok) return entry;
  const fate = isBlank(failed) ? 0 : failed;
  if (fate !== 0 && fate !== 1) return problem('badInput', 'failedFlag', 'failed', failed, { more: { row } });
  if (!(age.value > 0 && entry.value >= 0 && entry.value < age.value)) {
    return problem('badInput', 'lifeTooShort', 'life', age.value, { more: { row, entry: entry.value } });
  }
  const kind = fate === 1 ? 'exact' : 'right';
  return answer({ entry: entry.value, from: age.value, to: age.value, kind, count: 1 });
}
