import {
  ageSentence,
  lifeSentence,
  methodSentences,
  pastSentence,
  restsOnSentence,
} from '../../../src/report/methodSentences.ts';
import { CHARGED_EARLIER } from '../../../src/report/requestBlock.ts';
import { countedWord } from '../../../src/report/yearBlock.ts';
import type { ShownPlan } from '../../computing/planAnswer.ts';
import { PlotBand } from '../../parts/plotBand.tsx';
import { PlotBars } from '../../parts/plotBars.tsx';
import { WideTable } from '../../parts/wideTable.tsx';
import { wholeNumber } from '../../shownNumber.ts';
import { FundingPart } from './fundingPart.tsx';
import type { ShowDay } from './tables.ts';
import { askTable, netInAll, netOf, partTable, requestTable, unitsInAll, yearTable } from './tables.ts';
import {
  BAND_NOTE,
  BANDS_DO_NOT_ADD,
  DUE_NOTE,
  moneyTitle,
  monthsTitle,
  plannedSentence,
  RESULT,
} from '../../text/planText.ts';

type Of = { readonly plan: ShownPlan };

const chargedEarlier = ({ settings }: ShownPlan): boolean =>
  settings.chargeTo === 'order' && settings.money.unitPrice !== null;

/** The plan as it stands now: the request first, then what it is made of. */
export function PlanResult({ plan, showDay }: Of & { readonly showDay: ShowDay }) {
  return (
    <>
      <h3>{RESULT.heading}</h3>
      <p role="status" class="planned">
        {spokenResult(plan)}
      </p>
      <WideTable
        caption={RESULT.request}
        {...requestTable(plan, showDay)}
        {...(chargedEarlier(plan) ? { note: CHARGED_EARLIER } : {})}
      />
      <WideTable caption={RESULT.asks} {...askTable(plan)} />
      <WideTable
        caption={RESULT.years}
        {...yearTable(plan, showDay)}
        note={plan.dueNow > 0 ? `${BAND_NOTE} ${DUE_NOTE}` : BAND_NOTE}
      />
      <Pictures plan={plan} />
      <FundingPart plan={plan} />
      <Rests plan={plan} />
      <Parts plan={plan} />
    </>
  );
}

function spokenResult(plan: ShownPlan): string {
  const [first, last] = [plan.years[0]!.label, plan.years.at(-1)!.label];
  const net = netInAll(plan);
  const { currency } = plan.settings.money;
  const money = net === undefined ? undefined : `${wholeNumber(net)} ${currency}`.trim();
  return plannedSentence(
    wholeNumber(unitsInAll(plan)),
    first === last ? first : `${first} to ${last}`,
    money,
  );
}

function Pictures({ plan }: Of) {
  const { currency } = plan.settings.money;
  const counted = countedWord(plan);
  const bars = plan.years.map((year) => ({ label: year.label, value: netOf(year, plan) ?? 0 }));
  return (
    <>
      <PlotBand title={monthsTitle(counted)} unit={counted} period={RESULT.month} points={plan.months} />
      {netInAll(plan) !== undefined && (
        <PlotBars
          title={moneyTitle(plan.settings.chargeTo)}
          unit={currency || RESULT.moneyUnit}
          period={RESULT.year}
          bars={bars}
        />
      )}
    </>
  );
}

function Rests({ plan }: Of) {
  return (
    <>
      <h3>{RESULT.rests}</h3>
      <p>{lifeSentence(plan)}</p>
      <p>{restsOnSentence(plan)}</p>
      <p>{ageSentence(plan)}</p>
      {plan.ownPast[0] && <p>{pastSentence(plan.ownPast[0])}</p>}
      <details>
        <summary>{RESULT.method}</summary>
        {methodSentences({ plan }).map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </details>
    </>
  );
}

function Parts({ plan }: Of) {
  return (
    <>
      <details>
        <summary>{RESULT.sites}</summary>
        <WideTable
          caption={RESULT.sites}
          {...partTable(RESULT.site, plan.sites, plan)}
          note={BANDS_DO_NOT_ADD}
        />
      </details>
      <details>
        <summary>{RESULT.types}</summary>
        <WideTable
          caption={RESULT.types}
          {...partTable(RESULT.type, plan.types, plan)}
          note={BANDS_DO_NOT_ADD}
        />
      </details>
    </>
  );
}
