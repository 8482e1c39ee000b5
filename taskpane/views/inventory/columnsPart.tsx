import type { Field } from '../../../src/inventory/fields.ts';
import { FIELD_SPECS, FIELDS } from '../../../src/inventory/fields.ts';
import type { SheetParts } from '../../../src/inventory/sheetParts.ts';
import { fieldsShown, namableHeads } from '../../../src/inventory/sheetParts.ts';
import { giveAndRead } from '../../actions/settings.ts';
import { FoldedPart } from '../../parts/foldedPart.tsx';
import type { Session } from '../../session.ts';
import { COLUMNS } from '../../text/inventoryText.ts';

/** Each field of an inventory with the column that it is read from. */
export function ColumnsPart({ session }: { readonly session: Session }) {
  const parts = session.reading.value?.parts;
  if (parts === undefined) return null;
  const found = new Set(parts.columns.flatMap(({ field }) => field ?? []));
  const fields = fieldsShown(parts);
  const rows = (some: readonly Field[]) =>
    some.map((field) => <ColumnChoice key={field} session={session} parts={parts} field={field} />);
  return (
    <FoldedPart title={COLUMNS.title} state={COLUMNS.state(found.size, FIELDS.length)}>
      <p>{COLUMNS.lead}</p>
      {rows(fields.filter((field) => found.has(field)))}
      <details>
        <summary>{COLUMNS.more}</summary>
        {rows(fields.filter((field) => !found.has(field)))}
      </details>
      <button type="button" class="secondary" onClick={() => void giveAndRead(session, 'columns', {})}>
        {COLUMNS.restore}
      </button>
    </FoldedPart>
  );
}

function ColumnChoice({
  session,
  parts,
  field,
}: {
  readonly session: Session;
  readonly parts: SheetParts;
  readonly field: Field;
}) {
  const column = parts.columns.find((each) => each.field === field);
  const heads = namableHeads(parts);
  const hint = `column-${field}`;
  const isNameless = column !== undefined && column.head === '';
  return (
    <label class="choice">
      <span>{FIELD_SPECS[field].label}</span>
      <select
        value={column?.head ?? ''}
        aria-describedby={column && hint}
        onChange={({ currentTarget }) => void giveAndRead(session, ['columns', field], currentTarget.value)}
      >
        {!isNameless && <option value="">{COLUMNS.none}</option>}
        {isNameless && <option value="">{`column ${column.column + 1}`}</option>}
        {heads.map((head) => (
          <option key={head} value={head}>
            {head}
          </option>
        ))}
      </select>
      {column && (
        <small id={hint}>
          {COLUMNS.source[column.source ?? 'head']}; {COLUMNS.such(column.samples)}
        </small>
      )}
    </label>
  );
}
