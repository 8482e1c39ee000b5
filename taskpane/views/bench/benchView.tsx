import type { Session } from '../../session.ts';
import { VIEW_NAMES } from '../../text.ts';

/** The bench view. */
export function BenchView({ session }: { readonly session: Session }) {
  void session;
  return <h2>{VIEW_NAMES.bench}</h2>;
}
