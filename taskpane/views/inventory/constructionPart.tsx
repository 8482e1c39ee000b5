import { FIELD_SPECS } from '../../../src/inventory/fields.ts';
import type { ConstructionText } from '../../../src/inventory/inventory.ts';
import { giveAndRead } from '../../actions/settings.ts';
import { FoldedPart } from '../../parts/foldedPart.tsx';
import type { Session } from '../../session.ts';
import { CONSTRUCTION } from '../../text/inventoryText.ts';

const KINDS = ['AGM', 'flooded', 'gel'] as const;

/** The construction that each distinct text stands for. */
export function ConstructionPart({ session }: { readonly session: Session }) {
  const texts = session.reading.value?.constructions ?? [];
  const assumed = texts.reduce((sum, { from, count }) => sum + (from === 'assumed' ? count : 0), 0);
  const named = texts.filter(({ text }) => text !== '');
  const unsaid = texts.find(({ text }) => text === '');
  return (
    <FoldedPart title={CONSTRUCTION.title} state={CONSTRUCTION.state(assumed)}>
      {named.length === 0 ? <p>{CONSTRUCTION.none}</p> : <p>{CONSTRUCTION.lead}</p>}
      {named.map((one) => (
        <ConstructionChoice key={`${one.field} ${one.text}`} session={session} one={one} />
      ))}
      {named.length > 0 && unsaid && (
        <p class="note">
          {CONSTRUCTION.noText}: {CONSTRUCTION.rows(unsaid.count)}, {CONSTRUCTION.from.assumed}
        </p>
      )}
    </FoldedPart>
  );
}

function ConstructionChoice({ session, one }: { readonly session: Session; readonly one: ConstructionText }) {
  const { text, field, count, construction, from } = one;
  const take = (kind: string): void => void giveAndRead(session, ['constructions', text], kind);
  return (
    <label class="choice">
      <strong>{text}</strong>
      <select value={String(construction)} onChange={({ currentTarget }) => take(currentTarget.value)}>
        {KINDS.map((kind) => (
          <option key={kind} value={kind}>
            {kind}
          </option>
        ))}
        {typeof construction === 'number' && (
          <option value={String(construction)}>{CONSTRUCTION.own(construction)}</option>
        )}
      </select>
      <small>
        {FIELD_SPECS[field].label}, {CONSTRUCTION.rows(count)}; {CONSTRUCTION.from[from]}
      </small>
    </label>
  );
}
