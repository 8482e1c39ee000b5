import type { Session } from '../session.ts';

/** The last thing that the pane has to say; read out when it changes. */
export function NoticeLine({ session }: { readonly session: Session }) {
  const said = session.notice.value;
  return (
    <div role="status" aria-live="polite" class={said === undefined ? 'notice' : `notice ${said.kind}`}>
      {said?.text ?? ''}
    </div>
  );
}
