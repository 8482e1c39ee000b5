import { repairFormulas } from '../../actions/repairFormulas.ts';
import { FoldedPart } from '../../parts/foldedPart.tsx';
import type { Session } from '../../session.ts';
import { REPAIR } from '../../text/inventoryText.ts';

/** Mends formulas that Excel does not know; the built-in workbook always knows them. */
export function RepairPart({ session }: { readonly session: Session }) {
  if (session.host.kind !== 'excel') return null;
  return (
    <FoldedPart title={REPAIR.title}>
      <p>{REPAIR.hint}</p>
      <div class="buttons">
        <button type="button" class="secondary" onClick={() => void repairFormulas(session)}>
          {REPAIR.button}
        </button>
      </div>
    </FoldedPart>
  );
}
