import type { Session } from '../../session.ts';
import { VIEW_NAMES } from '../../text.ts';

/** The inventory view. */
export function InventoryView({ session }: { readonly session: Session }) {
  void session;
  return <h2>{VIEW_NAMES.inventory}</h2>;
}
