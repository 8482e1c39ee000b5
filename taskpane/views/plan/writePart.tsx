import { writeForecast } from '../../actions/writeForecast.ts';
import type { Session } from '../../session.ts';
import { RESULT } from './text.ts';

/** Writes the forecast as sheets of a workbook. */
export function WritePart({ session }: { readonly session: Session }) {
  return (
    <div class="write">
      <button type="button" aria-describedby="writeHint" onClick={() => void writeForecast(session)}>
        {RESULT.write}
      </button>
      <small id="writeHint">{RESULT.writeHint}</small>
    </div>
  );
}
