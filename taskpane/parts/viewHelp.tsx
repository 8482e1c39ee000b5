import type { View } from '../session.ts';
import { HELP_LINK, HELP_PAGE, VIEW_HELP } from '../text/paneText.ts';

/** What a view does and where its numbers come from, in two lines, with the place where it is told at length. */
export function ViewHelp({ of }: { readonly of: View }) {
  const { does, from, section } = VIEW_HELP[of];
  return (
    <div class="viewHelp">
      <p>{does}</p>
      <p>
        {from}{' '}
        <a href={`${HELP_PAGE}#${section}`} target="_blank" rel="noopener">
          {HELP_LINK[of]}
        </a>
      </p>
    </div>
  );
}
