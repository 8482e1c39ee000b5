import { COMPARE_FILES, COUNT } from '../../text/storeText.ts';

/** So many lines of a list are shown; the rest is counted. */
const SHOWN = 100;

/** One list of findings under its heading with its count; long ones are folded and cut, and say so. */
export function FoundList({
  heading,
  lines,
}: {
  readonly heading: string;
  readonly lines: readonly string[];
}) {
  if (lines.length === 0)
    return (
      <p>
        {heading}: {COUNT.none}.
      </p>
    );
  return (
    <details>
      <summary>
        {heading}: {lines.length}
      </summary>
      <ul>
        {lines.slice(0, SHOWN).map((line, index) => (
          <li key={`${index} ${line}`}>{line}</li>
        ))}
        {lines.length > SHOWN && <li>{COMPARE_FILES.more(lines.length - SHOWN)}</li>}
      </ul>
    </details>
  );
}
