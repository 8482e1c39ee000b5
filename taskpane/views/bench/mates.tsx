import { isoDay } from '../../../src/basics/calendar.ts';
import type { BenchFound } from '../../computing/benchAnswer.ts';
import { WideTable } from '../../parts/wideTable.tsx';
import { FACTS } from '../../text/benchText.ts';

const HEADS = [
  { text: FACTS.mate },
  { text: FACTS.made },
  { text: FACTS.months, number: true },
  { text: FACTS.lastTest },
  { text: FACTS.verdict },
];

/** The other batteries of its set, and what to do with them. */
export function MatesOf({
  found,
  isCondemned,
}: {
  readonly found: BenchFound;
  readonly isCondemned: boolean;
}) {
  const { name, mates, advice } = found.set;
  if (name === '') return null;
  const rows = mates.map(({ serial, made, months, testedOn, verdict }) => [
    serial,
    made === undefined ? '' : isoDay(made).slice(0, 7),
    months === undefined ? '' : months.toFixed(0),
    testedOn === undefined ? '' : isoDay(Math.floor(testedOn)),
    verdict ?? '',
  ]);
  return (
    <>
      {mates.length > 0 && <WideTable caption={`${FACTS.set}: ${name}`} heads={HEADS} rows={rows} />}
      {(isCondemned ? found.ifCondemned : advice).map((each) => (
        <p key={each}>{each}</p>
      ))}
    </>
  );
}
