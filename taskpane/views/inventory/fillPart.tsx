import { useSignal } from '@preact/signals';
import type { Field } from '../../../src/inventory/fields.ts';
import { FIELD_SPECS } from '../../../src/inventory/fields.ts';
import type { FillChoice } from '../../actions/fillColumns.ts';
import { fillColumns } from '../../actions/fillColumns.ts';
import type { FillKey } from '../../fill/columns.ts';
import { FILL_KEYS, FILL_SPECS, lacking } from '../../fill/columns.ts';
import { FoldedPart } from '../../parts/foldedPart.tsx';
import type { Session } from '../../session.ts';
import { FILL } from '../../text/inventoryText.ts';

/** Columns of answers, filled beside the inventory or on a sheet of their own. */
export function FillPart({ session }: { readonly session: Session }) {
  const keys = useSignal<readonly FillKey[]>([]);
  const as = useSignal<FillChoice['as']>('live');
  const chosenPlace = useSignal<FillChoice['place'] | undefined>(undefined);
  const problems = useSignal<FillChoice['problems']>('why');
  const empty = useSignal(false);
  if (session.reading.value === undefined) return null;
  const only = onlyNewSheet(session);
  const place = only === undefined ? (chosenPlace.value ?? usualPlace(session)) : 'newSheet';
  const isTable = session.where.value?.table !== undefined;
  const go = (): void => {
    empty.value = keys.value.length === 0;
    if (empty.value) return;
    void fillColumns(session, { keys: keys.value, as: as.value, place, problems: problems.value });
  };
  return (
    <FoldedPart title={FILL.title} state={FILL.state}>
      <KeyTicks session={session} keys={keys} />
      <Radios
        legend={FILL.where}
        name="fillPlace"
        value={place}
        choices={{ beside: isTable ? FILL.beside.table : FILL.beside.rows, newSheet: FILL.newSheet }}
        disabled={only !== undefined}
        hint={only}
        give={(value) => (chosenPlace.value = value)}
      />
      {place === 'beside' && (
        <Radios
          legend={FILL.how}
          name="fillAs"
          value={as.value}
          choices={{ live: FILL.live, values: FILL.values }}
          hint={FILL.note}
          give={(value) => (as.value = value)}
        />
      )}
      <Radios
        legend={FILL.problems}
        name="fillProblems"
        value={problems.value}
        choices={{ why: FILL.why, error: FILL.error }}
        give={(value) => (problems.value = value)}
      />
      <button type="button" onClick={go} aria-describedby="fillEmpty">
        {FILL.go}
      </button>
      <small id="fillEmpty" role="alert" class="wrong">
        {empty.value ? FILL.nothing : ''}
      </small>
    </FoldedPart>
  );
}

/** Why nothing can be filled beside the inventory, or undefined where it can. */
function onlyNewSheet({ workbook, where, home }: Session): string | undefined {
  if (home.value === 'own') return FILL.ownHome;
  const sheet = workbook.value?.sheets.find(({ name }) => name === where.value?.sheet);
  return sheet?.isProtected === true ? FILL.isProtected : undefined;
}

const usualPlace = ({ where }: Session): FillChoice['place'] =>
  where.value?.table === undefined ? 'newSheet' : 'beside';

function KeyTicks({
  session,
  keys,
}: {
  readonly session: Session;
  readonly keys: { value: readonly FillKey[] };
}) {
  const has = new Set(Object.keys(session.reading.value?.columns ?? {}) as Field[]);
  const hasTests =
    session.workbook.value?.sheets.some(({ name }) => /^(tests|charges)$/i.test(name)) === true;
  return (
    <fieldset>
      <legend>{FILL.which}</legend>
      {FILL_KEYS.map((key) => {
        const missing = hasTests ? [] : lacking(key, has);
        return (
          <label key={key}>
            <input
              type="checkbox"
              disabled={missing.length > 0}
              checked={keys.value.includes(key)}
              onChange={({ currentTarget }) => (keys.value = withKey(keys.value, key, currentTarget.checked))}
            />
            {FILL_SPECS[key].head}
            {missing.length > 0 && (
              <small>{FILL.lacks(missing.flat().map((field) => FIELD_SPECS[field].label))}</small>
            )}
          </label>
        );
      })}
    </fieldset>
  );
}

const withKey = (keys: readonly FillKey[], key: FillKey, wanted: boolean): readonly FillKey[] =>
  FILL_KEYS.filter((each) => (each === key ? wanted : keys.includes(each)));

function Radios<K extends string>({
  legend,
  name,
  value,
  choices,
  disabled = false,
  hint,
  give,
}: {
  readonly legend: string;
  readonly name: string;
  readonly value: K;
  readonly choices: Readonly<Record<K, string>>;
  readonly disabled?: boolean;
  readonly hint?: string | undefined;
  readonly give: (value: K) => void;
}) {
  return (
    <fieldset disabled={disabled} aria-describedby={hint && `${name}Hint`}>
      <legend>{legend}</legend>
      {(Object.keys(choices) as K[]).map((key) => (
        <label key={key}>
          <input type="radio" name={name} checked={value === key} onChange={() => give(key)} />
          {choices[key]}
        </label>
      ))}
      {hint && <small id={`${name}Hint`}>{hint}</small>}
    </fieldset>
  );
}
