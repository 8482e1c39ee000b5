import { ProgressLine } from '../parts/progressLine.tsx';
import type { PageState } from './pageState.ts';
import { PAGE } from './pageText.ts';

/** The last thing that the page has to say; read out when it changes, and it can be put away. */
export function PageMessage({ page }: { readonly page: PageState }) {
  const said = page.message.value;
  return (
    <>
      <ProgressLine session={page} />
      <div role="status" class={said === undefined ? 'pageMessage none' : `pageMessage ${said.kind}`}>
        {said !== undefined && (
          <>
            <div>
              <p>{said.text}</p>
              {(said.more ?? []).length > 0 && (
                <ul>
                  {said.more!.map((sentence) => (
                    <li key={sentence}>{sentence}</li>
                  ))}
                </ul>
              )}
            </div>
            <button type="button" class="outline secondary" onClick={() => (page.message.value = undefined)}>
              {PAGE.close}
            </button>
          </>
        )}
      </div>
    </>
  );
}
