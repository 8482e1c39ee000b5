import { writeForecast } from '../../actions/writeForecast.ts';
import { TickSetting } from '../../parts/settingField.tsx';
import type { Session } from '../../session.ts';
import { RESULT } from '../../text/planText.ts';

/** Writes the forecast as sheets of a workbook. */
export function WritePart({ session }: { readonly session: Session }) {
  return (
    <div class="write">
      <TickSetting
        session={session}
        path="liveFormulas"
        label={RESULT.liveFormulas}
        hint={RESULT.liveFormulasHint}
      />
      <button type="button" aria-describedby="writeHint" onClick={() => void writeForecast(session)}>
        {RESULT.write}
      </button>
      <small id="writeHint">{RESULT.writeHint}</small>
    </div>
  );
}
