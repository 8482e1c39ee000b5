import { address } from '../../../src/report/sheet.ts';
import { giveSetting } from '../../actions/giveSetting.ts';
import { giveAndRead } from '../../actions/settings.ts';
import { placeKey, placesIn, readAtCursor } from '../../actions/places.ts';
import { readHere } from '../../actions/readInventory.ts';
import { FoldedPart } from '../../parts/foldedPart.tsx';
import type { Session, Where } from '../../session.ts';
import { settingsInForce } from '../../session.ts';
import { RecognisedList } from './recognisedList.tsx';
import { WHERE } from '../../text/inventoryText.ts';

/** Where the inventory is: what is read, how it was taken apart, and ways to say something else. */
export function WherePart({ session }: { readonly session: Session }) {
  const reading = session.reading.value;
  const where = session.where.value;
  const state = [where && placeName(where), reading && WHERE.batteries(reading.batteryCount)];
  return (
    <FoldedPart title={WHERE.title} state={state.filter(Boolean).join(', ')} open={reading === undefined}>
      <PlaceChoice session={session} />
      <HeaderRow session={session} />
      <label>
        <input
          type="checkbox"
          checked={settingsInForce(session).visibleOnly}
          onChange={({ currentTarget }) => void giveAndRead(session, 'visibleOnly', currentTarget.checked)}
        />
        {WHERE.visible}
      </label>
      <div class="buttons">
        <button type="button" class="secondary" onClick={() => void readHere(session)}>
          {WHERE.again}
        </button>
        <button type="button" class="secondary" onClick={() => void readAtCursor(session)}>
          {WHERE.atCursor}
        </button>
      </div>
      {reading && <RecognisedList reading={reading} />}
    </FoldedPart>
  );
}

function placeName({ sheet, table, block, wholeSheet }: Where): string {
  if (table !== undefined) return WHERE.table(table, sheet);
  if (wholeSheet !== false) return WHERE.sheet(sheet);
  const last = address(block.row + block.rows - 1, block.column + block.columns - 1);
  return WHERE.cursorBlock(`${address(block.row, block.column)}:${last}`, sheet);
}

function PlaceChoice({ session }: { readonly session: Session }) {
  const { workbook, where } = session;
  if (workbook.value === undefined) return null;
  const places = placesIn(workbook.value);
  const now = where.value;
  const isListed = now !== undefined && places.some(({ key }) => key === placeKey(now));
  const choose = (key: string): void => {
    const chosen = places.find((place) => place.key === key);
    if (chosen === undefined) return;
    giveSetting(session, 'tab', chosen.where.sheet);
    void readHere(session, chosen.where);
  };
  return (
    <label>
      {WHERE.place}
      <select
        value={now === undefined ? '' : placeKey(now)}
        onChange={({ currentTarget }) => choose(currentTarget.value)}
      >
        {!isListed && <option value={now === undefined ? '' : placeKey(now)}>{now && placeName(now)}</option>}
        {places.map((place) => (
          <option key={place.key} value={place.key}>
            {placeName(place.where)}
          </option>
        ))}
      </select>
    </label>
  );
}

function HeaderRow({ session }: { readonly session: Session }) {
  const { headerRow } = settingsInForce(session);
  const take = (text: string): void =>
    void giveAndRead(session, 'headerRow', text === '' ? undefined : Number(text));
  return (
    <label>
      {WHERE.headerRow}
      <input
        type="number"
        min="1"
        step="1"
        inputMode="numeric"
        aria-describedby="headerHint"
        value={headerRow ?? ''}
        placeholder={String(session.reading.value?.parts.headerRows[0] ?? '')}
        onChange={({ currentTarget }) => take(currentTarget.value)}
      />
      <small id="headerHint">{WHERE.headerHint}</small>
    </label>
  );
}
