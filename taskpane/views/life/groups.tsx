import type { LifeByGroup } from '../../../src/planning/lifeByGroup.ts';
import { WideTable } from '../../parts/wideTable.tsx';
import { GROUPS } from '../../text/lifeText.ts';

const perCent = (chance: number): string =>
  chance < 0.001 ? 'less than 1 in 1,000' : `${(100 * chance).toPrecision(2)} %`;

/** A test under this says that groups differ. */
const DIFFER = 0.05;

/** How long batteries of each type, site and maker last, and whether they differ. */
export function Groups({ groups }: { readonly groups: readonly LifeByGroup[] }) {
  return (
    <section aria-labelledby="groups">
      <h3 id="groups">{GROUPS.heading}</h3>
      <p>{groups.length === 0 ? GROUPS.one : GROUPS.hint}</p>
      {groups.map((found) => (
        <div key={found.by}>
          <p>
            <strong>{GROUPS.by[found.by]}:</strong> {verdict(found)}
          </p>
          <details>
            <summary>{GROUPS.numbers[found.by]}</summary>
            {found.notCompared.length > 0 && (
              <p>{GROUPS.notCompared(found.notCompared.map((name) => name || GROUPS.unnamed).join(', '))}</p>
            )}
            <GroupTable found={found} />
          </details>
        </div>
      ))}
    </section>
  );
}

function verdict({ chanceAlike }: LifeByGroup): string {
  if (chanceAlike === undefined) return GROUPS.cannotSay;
  return chanceAlike < DIFFER ? GROUPS.differ(perCent(chanceAlike)) : GROUPS.alike(perCent(chanceAlike));
}

const HEADS = [
  { text: GROUPS.name },
  { text: GROUPS.lives, number: true },
  { text: GROUPS.failures, number: true },
  { text: GROUPS.half, number: true },
  { text: GROUPS.band },
];

function GroupTable({ found }: { readonly found: LifeByGroup }) {
  const rows = found.groups.map(({ name, lives, failures, halfGone: { best, low, high } }) => [
    name || GROUPS.unnamed,
    String(lives),
    String(failures),
    best.toFixed(0),
    `${low.toFixed(0)} to ${high.toFixed(0)}`,
  ]);
  return <WideTable caption={GROUPS.by[found.by]} heads={HEADS} rows={rows} />;
}
