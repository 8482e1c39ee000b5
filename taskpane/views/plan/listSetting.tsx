import type { ComponentChildren } from 'preact';
import { useId, useState } from 'preact/hooks';
import { giveSetting } from '../../actions/giveSetting.ts';
import { fieldProblem } from '../../parts/fieldProblem.ts';
import type { Session } from '../../session.ts';
import { settingsInForce } from '../../session.ts';
import { LIST } from '../../text/planText.ts';

/** The settings that are lists of months and counts. */
type ListPath = 'onOrder' | 'fleetChanges';
type Entry = {
  readonly month: string;
  readonly count: number;
  readonly site?: string;
  readonly type?: string;
};

/** A list of months and counts: what stands in it can be taken out, more can be added. */
export function ListSetting({
  session,
  path,
  legend,
  nothing,
  add,
  more,
}: {
  readonly session: Session;
  readonly path: ListPath;
  readonly legend: string;
  readonly nothing: string;
  /** What the button says that adds an entry. */
  readonly add: string;
  /** Further fields of a new entry. */
  readonly more?: ComponentChildren;
}) {
  const [wrong, setWrong] = useState<string>();
  const counted = path === 'onOrder' ? LIST.count : LIST.change;
  const entries: readonly Entry[] = settingsInForce(session)[path];
  const give = (next: readonly Entry[]): boolean => {
    const refused = giveSetting(session, path, next.length === 0 ? undefined : next);
    setWrong(refused && fieldProblem(refused, refused.argument.endsWith('.count') ? counted : LIST.month));
    return refused === undefined;
  };
  const without = (index: number) => entries.filter((_, each) => each !== index);
  return (
    <fieldset class="list">
      <legend>{legend}</legend>
      {entries.length === 0 ? (
        <p>{nothing}</p>
      ) : (
        <Entries entries={entries} takeOut={(index) => give(without(index))} />
      )}
      <AddForm counted={counted} button={add} wrong={wrong} add={(entry) => give([...entries, entry])}>
        {more}
      </AddForm>
    </fieldset>
  );
}

function Entries({
  entries,
  takeOut,
}: {
  readonly entries: readonly Entry[];
  readonly takeOut: (index: number) => void;
}) {
  return (
    <ul>
      {entries.map((entry, index) => (
        <li key={`${index} ${entry.month}`}>
          <span>{entryText(entry)}</span>{' '}
          <button
            type="button"
            class="inline secondary"
            aria-label={`${LIST.remove}: ${entryText(entry)}`}
            onClick={() => takeOut(index)}
          >
            {LIST.remove}
          </button>
        </li>
      ))}
    </ul>
  );
}

function AddForm({
  counted,
  button,
  wrong,
  add,
  children,
}: {
  readonly counted: string;
  readonly button: string;
  readonly wrong: string | undefined;
  /** Takes a new entry. @returns whether it was taken */
  readonly add: (entry: Entry) => boolean;
  readonly children: ComponentChildren;
}) {
  const id = useId();
  const described = wrong === undefined ? undefined : id;
  const invalid = wrong === undefined ? undefined : 'true';
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        const form = event.currentTarget;
        if (add(entryOf(new FormData(form)))) form.reset();
      }}
    >
      <div class="pair">
        <label>
          {LIST.month}
          <input
            name="month"
            type="month"
            placeholder={LIST.monthHint}
            aria-invalid={invalid}
            aria-describedby={described}
          />
        </label>
        <label>
          {counted}
          <input name="count" type="number" step="1" aria-invalid={invalid} aria-describedby={described} />
        </label>
      </div>
      {children}
      {wrong && (
        <small id={id} class="wrong" role="alert">
          {wrong}
        </small>
      )}
      <button type="submit" class="secondary">
        {button}
      </button>
    </form>
  );
}

function entryText({ month, count, site = '', type = '' }: Entry): string {
  return [`${month}: ${count}`, site, type].filter((part) => part !== '').join(', ');
}

function entryOf(form: FormData): Entry {
  const count = String(form.get('count') ?? '');
  const [site, type] = [form.get('site'), form.get('type')].map((name) => String(name ?? ''));
  return {
    month: String(form.get('month') ?? '').trim(),
    count: count === '' ? Number.NaN : Number(count),
    ...(site && { site }),
    ...(type && { type }),
  };
}
