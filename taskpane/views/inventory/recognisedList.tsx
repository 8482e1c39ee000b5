import type { Reading } from '../../computing/readAnswer.ts';
import { WHERE } from '../../text/inventoryText.ts';

/** What was recognised of the sheet, row by row of its parts. */
export function RecognisedList({ reading }: { readonly reading: Reading }) {
  const { parts, rows, leftOutReasons, notes } = reading;
  return (
    <>
      <h4>{WHERE.recognised}</h4>
      <ul>
        <li>{WHERE.titles(parts.titleRows)}</li>
        <li>
          {WHERE.heads(parts.headerRows)}, {WHERE.rows(parts.dataRows)}
        </li>
        {parts.siteHeadings.length > 0 && <li>{WHERE.headings(parts.siteHeadings)}</li>}
        <li>{WHERE.counts(rows.used, rows.repaired, rows.ageUnknown)}</li>
        {Object.entries(leftOutReasons).map(([reason, count]) => (
          <li key={reason}>{WHERE.leftOut(reason, count)}</li>
        ))}
        {notes.map((note) => (
          <li key={note}>{note}</li>
        ))}
      </ul>
    </>
  );
}
