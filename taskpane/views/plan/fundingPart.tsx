import { useState } from 'preact/hooks';
import { chanceAt } from '../../../src/planning/funding.ts';
import { countedWord } from '../../../src/report/yearBlock.ts';
import type { ShownPlan } from '../../computing/planAnswer.ts';
import { LabelledControl } from '../../parts/settingField.tsx';
import { oneDecimal, perCent } from '../../shownNumber.ts';
import { FUNDING_NOTE, FUNDING_TOO_FEW, fundingLabel, fundingSentence, RESULT } from '../../text/planText.ts';

/** If so many batteries are funded: the chance that they are enough, and how many are likely missing. */
export function FundingPart({ plan }: { readonly plan: ShownPlan }) {
  const [typed, setTyped] = useState<string>();
  const { funding } = plan;
  if (funding.rows.length === 0) return null;
  const funded = typed ?? String(fundedAtFirst(plan));
  return (
    <>
      <h3>{RESULT.funding}</h3>
      <LabelledControl
        label={fundingLabel(countedWord(plan), funding.until)}
        hint={FUNDING_NOTE}
        wrong={undefined}
      >
        {(props) => (
          <input
            {...props}
            type="number"
            min="0"
            step="1"
            value={funded}
            onInput={({ currentTarget }) => setTyped(currentTarget.value)}
          />
        )}
      </LabelledControl>
      <p role="status">{fundingAnswer(plan, Number(funded))}</p>
    </>
  );
}

/** What is asked for in the begun fiscal year and the first whole one. */
export function fundedAtFirst({ years, settings }: ShownPlan): number {
  return Math.round(years.slice(0, 2).reduce((sum, { needs }) => sum + needs[settings.ask], 0));
}

/** The sentence for a number of funded batteries. */
function fundingAnswer({ funding }: ShownPlan, funded: number): string {
  const row = chanceAt(funding, funded);
  return row === undefined ? FUNDING_TOO_FEW : fundingSentence(perCent(row.chance), oneDecimal(row.missing));
}
