import { homeChosen, homesOf } from '../../actions/home.ts';
import { hasSettingsSheet, writeSettingsSheet } from '../../actions/settings.ts';
import { saveSettingsFile, takeSettings } from '../../actions/settingsFile.ts';
import { underway } from '../../actions/underway.ts';
import { FoldedPart } from '../../parts/foldedPart.tsx';
import type { Home, Session } from '../../session.ts';
import { COPY_BY_HAND } from '../../text/paneText.ts';
import { TakenList } from './takenList.tsx';
import { HOME } from '../../text/inventoryText.ts';

/** Where Crankbook may write, and the settings as a file. */
export function HomePart({ session }: { readonly session: Session }) {
  const home = session.home.value;
  return (
    <FoldedPart title={HOME.title} state={home === undefined ? HOME.open : HOME.states[home]}>
      <fieldset>
        <legend>{HOME.question}</legend>
        {homesOf(session).map((choice) => (
          <label key={choice}>
            <input
              type="radio"
              name="home"
              checked={home === choice}
              onChange={() => void choose(session, choice)}
            />
            {HOME.choices[choice]}
          </label>
        ))}
        <small>{HOME.hint}</small>
        {!homesOf(session).includes('copy') && <small>{COPY_BY_HAND}</small>}
      </fieldset>
      {hasSettingsSheet(session) && <p class="note">{HOME.written}</p>}
      <div class="buttons">
        <button type="button" class="secondary" onClick={() => saveSettingsFile(session)}>
          {HOME.save}
        </button>
      </div>
      <label>
        {HOME.take}
        <input
          type="file"
          accept=".json,.xlsx,.xlsm"
          aria-describedby="takeHint"
          onChange={({ currentTarget }) => void taken(session, currentTarget)}
        />
        <small id="takeHint">{HOME.takeHint}</small>
      </label>
      <TakenList session={session} />
    </FoldedPart>
  );
}

async function choose(session: Session, home: Home): Promise<void> {
  session.home.value = undefined;
  const asked = homeChosen(session);
  session.homeAsked.value?.(home);
  const chosen = await asked;
  if (chosen === 'here' || chosen === 'copy')
    await underway(session, HOME.writing, () => writeSettingsSheet(session));
}

async function taken(session: Session, input: HTMLInputElement): Promise<void> {
  const file = input.files?.[0];
  if (file === undefined) return;
  await takeSettings(session, { name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) });
  // The same file can be chosen again after it was changed elsewhere.
  input.value = '';
}
