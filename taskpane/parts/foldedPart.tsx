import type { ComponentChildren } from 'preact';

/** A part of a view under its heading and, in a few words, its state; it opens and closes. */
export function FoldedPart({
  title,
  state,
  open = false,
  children,
}: {
  readonly title: string;
  readonly state?: string;
  readonly open?: boolean;
  readonly children: ComponentChildren;
}) {
  return (
    <details class="foldedPart" open={open}>
      <summary>
        <h3>{title}</h3>
        {state && <span class="state">{state}</span>}
      </summary>
      <div class="partBody">{children}</div>
    </details>
  );
}
