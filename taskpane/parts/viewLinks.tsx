import type { Session } from '../session.ts';
import { VIEWS } from '../session.ts';
import { VIEW_NAMES } from '../text/paneText.ts';

/** The four views as a list of links; the one that is open is marked for the eye and for screen readers. */
export function ViewLinks({ session }: { readonly session: Session }) {
  return (
    <nav aria-label="Views">
      <ul>
        {VIEWS.map((view) => (
          <li key={view}>
            <a
              href={`#${view}`}
              aria-current={session.view.value === view ? 'page' : undefined}
              onClick={(event) => {
                event.preventDefault();
                session.view.value = view;
              }}
            >
              {VIEW_NAMES[view]}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}
