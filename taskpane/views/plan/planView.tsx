import type { Session } from '../../session.ts';
import { VIEW_NAMES } from '../../text.ts';

/** The plan view. */
export function PlanView({ session }: { readonly session: Session }) {
  void session;
  return <h2>{VIEW_NAMES.plan}</h2>;
}
