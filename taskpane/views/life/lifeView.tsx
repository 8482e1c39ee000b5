import type { Session } from '../../session.ts';
import { VIEW_NAMES } from '../../text.ts';

/** The life view. */
export function LifeView({ session }: { readonly session: Session }) {
  void session;
  return <h2>{VIEW_NAMES.life}</h2>;
}
