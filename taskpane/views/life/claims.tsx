import { useState } from 'preact/hooks';
import { shownDay } from '../../../src/report/shownDay.ts';
import type { DateShown } from '../../../src/report/sheet.ts';
import type { WarrantyClaim } from '../../../src/inventory/warrantyClaims.ts';
import { claimsWithin } from '../../actions/showLife.ts';
import { FoldedPart } from '../../parts/foldedPart.tsx';
import { LabelledControl } from '../../parts/settingField.tsx';
import { WideTable } from '../../parts/wideTable.tsx';
import type { Session } from '../../session.ts';
import { settingsInForce } from '../../session.ts';
import { CLAIMS } from '../../text/lifeText.ts';

const HEADS = [
  { text: CLAIMS.serial },
  { text: CLAIMS.failed },
  { text: CLAIMS.covered },
  { text: CLAIMS.by },
  { text: CLAIMS.left, number: true },
];

/** Batteries that failed within their warranty, with the last day to claim. */
export function Claims({ session }: { readonly session: Session }) {
  const { dateShown } = settingsInForce(session);
  const [claims, setClaims] = useState<readonly WarrantyClaim[]>();
  const list = async (form: FormData): Promise<void> => {
    const terms = { months: Number(form.get('months')), claimDays: Number(form.get('days')) };
    setClaims(await claimsWithin(session, terms));
  };
  return (
    <FoldedPart title={CLAIMS.heading} {...(claims && { state: claimsState(claims) })}>
      <p>{CLAIMS.hint}</p>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void list(new FormData(event.currentTarget));
        }}
      >
        <Term name="months" label={CLAIMS.months} max={240} />
        <Term name="days" label={CLAIMS.days} max={3660} />
        <button type="submit">{CLAIMS.list}</button>
      </form>
      <div role="status">
        {claims?.length === 0 && <p>{CLAIMS.none}</p>}
        {claims !== undefined && claims.length > 0 && (
          <WideTable
            caption={CLAIMS.heading}
            heads={HEADS}
            rows={claims.map((claim) => row(claim, dateShown))}
          />
        )}
      </div>
    </FoldedPart>
  );
}

// Most of a long list may be past: what can still be claimed is said apart.
function claimsState(claims: readonly WarrantyClaim[]): string {
  const late = claims.filter(({ daysLeft }) => daysLeft < 0).length;
  return CLAIMS.state(claims.length - late, late);
}

function Term({ name, label, max }: { readonly name: string; readonly label: string; readonly max: number }) {
  return (
    <LabelledControl label={label} hint={undefined} wrong={undefined}>
      {(props) => <input {...props} name={name} type="number" min="0" max={max} step="1" required />}
    </LabelledControl>
  );
}

function row(claim: WarrantyClaim, dateShown: DateShown): string[] {
  const { life, failedOn, coveredUntil, claimBy, daysLeft } = claim;
  const days = [failedOn, coveredUntil, claimBy].map((day) => shownDay(day, dateShown));
  const left = daysLeft < 0 ? CLAIMS.late : String(daysLeft);
  return [life.serial, ...days, left];
}
