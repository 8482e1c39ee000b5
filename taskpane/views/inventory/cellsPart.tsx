import { giveAndRead } from '../../actions/settings.ts';
import { FoldedPart } from '../../parts/foldedPart.tsx';
import type { Session } from '../../session.ts';
import { settingsInForce } from '../../session.ts';
import { READING } from '../../text/inventoryText.ts';

/** How cells are read where they leave it open: codes by maker, the order in dates, the unit of temperatures. */
export function CellsPart({ session }: { readonly session: Session }) {
  const { layouts: read = {}, layoutMeanings = {} } = session.reading.value ?? {};
  const layouts = Object.entries(read);
  const { dateOrder, temperatureUnit } = settingsInForce(session);
  return (
    <FoldedPart title={READING.title} state={READING.state}>
      {layouts.length > 0 && (
        <fieldset aria-describedby="layoutHint">
          <legend>{READING.layouts}</legend>
          {layouts.map(([maker, layout], index) => (
            <label key={maker} class="choice">
              <span>{READING.layout(maker)}</span>
              <input
                type="text"
                value={layout}
                aria-describedby={`layout-${index}`}
                onChange={({ currentTarget }) =>
                  void giveAndRead(session, ['layouts', maker], currentTarget.value.trim() || undefined)
                }
              />
              <small id={`layout-${index}`}>{READING.meaning(layoutMeanings[maker] ?? '')}</small>
            </label>
          ))}
          <small id="layoutHint">{READING.layoutHint}</small>
        </fieldset>
      )}
      <Choice
        label={READING.dateOrder}
        words={READING.orders}
        value={dateOrder}
        give={(value) => void giveAndRead(session, 'dateOrder', value)}
      />
      <Choice
        label={READING.unit}
        words={READING.units}
        value={temperatureUnit}
        give={(value) => void giveAndRead(session, 'temperatureUnit', value)}
      />
    </FoldedPart>
  );
}

function Choice({
  label,
  words,
  value,
  give,
}: {
  readonly label: string;
  readonly words: Readonly<Record<string, string>>;
  readonly value: string | undefined;
  readonly give: (value: string | undefined) => void;
}) {
  return (
    <label>
      {label}
      <select
        value={value ?? 'none'}
        onChange={({ currentTarget: { value: chosen } }) => give(chosen === 'none' ? undefined : chosen)}
      >
        {Object.entries(words).map(([key, text]) => (
          <option key={key} value={key}>
            {text}
          </option>
        ))}
      </select>
    </label>
  );
}
