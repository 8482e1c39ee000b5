import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { problemText } from '../../../src/basics/problemText.ts';
import { giveSetting } from '../../actions/giveSetting.ts';
import type { Session } from '../../session.ts';
import { settingsInForce } from '../../session.ts';
import { LIST } from './text.ts';

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
  more,
}: {
  readonly session: Session;
  readonly path: ListPath;
  readonly legend: string;
  readonly nothing: string;
  /** Further fields of a new entry. */
  readonly more?: ComponentChildren;
}) {
  const [wrong, setWrong] = useState<string>();
  const entries: readonly Entry[] = settingsInForce(session)[path];
  const give = (next: readonly Entry[]): boolean => {
    const refused = giveSetting(session, path, next.length === 0 ? undefined : next);
    setWrong(refused && problemText(refused));
    return refused === undefined;
  };
  return (
    <fieldset class="list">
      <legend>{legend}</legend>
      {entries.length === 0 ? (
        <p>{nothing}</p>
      ) : (
        <ul>
          {entries.map((entry, index) => (
            <li key={`${index} ${entry.month}`}>
              <span>{entryText(entry)}</span>{' '}
              <button
                type="button"
                class="secondary"
                aria-label={`${LIST.remove}: ${entryText(entry)}`}
                onClick={() => give(entries.filter((_, each) => each !== index))}
              >
                {LIST.remove}
              </button>
            </li>
          ))}
        </ul>
      )}
      <form
        onSubmit={(event) => {
          event.preventDefault();
          if (give([...entries, entryOf(new FormData(event.currentTarget))])) event.currentTarget.reset();
        }}
      >
        <div class="pair">
          <label>
            {LIST.month}
            <input
              name="month"
              type="month"
              placeholder="2027-03"
              aria-invalid={wrong ? 'true' : undefined}
            />
          </label>
          <label>
            {path === 'onOrder' ? LIST.count : LIST.change}
            <input name="count" type="number" step="1" aria-invalid={wrong ? 'true' : undefined} />
          </label>
        </div>
        {more}
        {wrong && (
          <small class="wrong" role="alert">
            {wrong}
          </small>
        )}
        <button type="submit" class="secondary">
          {`${LIST.add}: ${legend.toLowerCase()}`}
        </button>
      </form>
    </fieldset>
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
