import { unmatchedSettings } from '../../../src/inventory/unmatchedSettings.ts';
import type { Session } from '../../session.ts';
import { settingsInForce } from '../../session.ts';
import { HOME } from '../../text/inventoryText.ts';

/** Where the settings come from, and what of them this inventory does not have. */
export function TakenList({ session }: { readonly session: Session }) {
  const taken = session.taken.value;
  const reading = session.reading.value;
  if (taken === undefined) return null;
  const others = reading === undefined ? [] : unmatchedSettings(settingsInForce(session), reading);
  const unmatched = [...taken.columns, ...others];
  return (
    <div role="status" class="taken">
      <p>
        {HOME.taken(taken.from)} {unmatched.length === 0 ? HOME.allMatch : HOME.unmatchedLead}
      </p>
      {unmatched.length > 0 && (
        <ul>
          {unmatched.map(({ what, name }) => (
            <li key={`${what} ${name}`}>
              {what} <strong>{name}</strong>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
