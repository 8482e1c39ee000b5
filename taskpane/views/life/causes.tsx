import type { RemovalMeaning } from '../../../src/service/battery.ts';
import { giveSetting } from '../../actions/giveSetting.ts';
import { readAgain } from '../../actions/readInventory.ts';
import { FoldedPart } from '../../parts/foldedPart.tsx';
import type { Session } from '../../session.ts';
import { CAUSES, MEANINGS } from '../../text/lifeText.ts';

/** A longer list opens with a click; its state says how many of it are guesses. */
const SHOWN_AT_ONCE = 8;

/** Every text of the removal-cause column once, with what it is taken to mean. */
export function Causes({ session }: { readonly session: Session }) {
  const causes = session.reading.value?.causes ?? [];
  const take = (text: string, meaning: string): void => {
    giveSetting(session, ['causes', text], meaning);
    void readAgain(session);
  };
  const guesses = causes.filter(({ guessed }) => guessed).length;
  return (
    <FoldedPart
      title={CAUSES.heading}
      state={CAUSES.state(causes.length, guesses)}
      open={causes.length <= SHOWN_AT_ONCE}
    >
      {causes.length === 0 ? (
        <p>{CAUSES.none}</p>
      ) : (
        <>
          <p>{CAUSES.hint}</p>
          <ul class="causes">
            {causes.map(({ text, count, meaning, guessed }) => (
              <li key={text}>
                <label>
                  <span>
                    <strong>{text === '' ? CAUSES.empty : text}</strong>, {CAUSES.rows(count)}
                    {guessed && <em> ({CAUSES.guess})</em>}
                  </span>
                  <select value={meaning} onChange={({ currentTarget }) => take(text, currentTarget.value)}>
                    {(Object.keys(MEANINGS) as RemovalMeaning[]).map((each) => (
                      <option key={each} value={each}>
                        {MEANINGS[each]}
                      </option>
                    ))}
                  </select>
                </label>
              </li>
            ))}
          </ul>
        </>
      )}
    </FoldedPart>
  );
}
