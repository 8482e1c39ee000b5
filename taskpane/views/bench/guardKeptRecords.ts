import type { Session } from '../../session.ts';

const guarded = new WeakSet<Session>();

/** Has the browser ask before records that nobody has taken yet are lost with the page. */
export function guardKeptRecords(session: Session): void {
  if (guarded.has(session)) return;
  guarded.add(session);
  window.addEventListener('beforeunload', (event) => {
    if (session.bench.kept.value.length > 0) event.preventDefault();
  });
}
