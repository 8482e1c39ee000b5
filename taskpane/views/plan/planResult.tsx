import {
  ageSentence,
  lifeSentence,
  methodSentences,
  pastSentence,
  restsOnSentence,
} from '../../../src/report/methodSentences.ts';
import { CHARGED_EARLIER } from '../../../src/report/requestBlock.ts';
import type { DateShown } from '../../../src/report/sheet.ts';
import { shownDay } from '../../../src/report/shownDay.ts';
import { countedWord } from '../../../src/report/yearBlock.ts';
import type { ShownPlan } from '../../computing/planAnswer.ts';
import { PlotBand } from '../../parts/plotBand.tsx';
import { PlotBars } from '../../parts/plotBars.tsx';
import { WideTable } from '../../parts/wideTable.tsx';
import { shownMoney, wholeNumber } from '../../shownNumber.ts';
import { FundingPart } from './fundingPart.tsx';
import type { ShowDay } from './tables.ts';
import { askTable, netInAll, netOf, partTable, requestTable, unitsInAll, yearTable } from './tables.ts';
import {
  asksTitle,
  BAND_NOTE,
  BANDS_DO_NOT_ADD,
  DUE_NOTE,
  moneyTitle,
  monthsTitle,
  plannedSentence,
  RESULT,
  TYPES_AS_WRITTEN,
} from '../../text/planText.ts';

const showDay =
  (dateShown: DateShown): ShowDay =>
  (day) =>
    shownDay(day, dateShown);

type Of = { readonly plan: ShownPlan };

const chargedEarlier = ({ settings }: ShownPlan): boolean =>
  settings.chargeTo === 'order' && settings.money.unitPrice !== null;

/** The request at a glance, before what it was counted from. */
export function PlanRequest({ plan, dateShown }: Of & { readonly dateShown: DateShown }) {
  return (
    <>
      <h3>{RESULT.heading}</h3>
      <p role="status" class="planned">
        {spokenResult(plan)}
      </p>
      <WideTable
        caption={RESULT.request}
        {...requestTable(plan, showDay(dateShown))}
        {...(chargedEarlier(plan) ? { note: CHARGED_EARLIER } : {})}
      />
    </>
  );
}

/** What the request is made of, and what it rests on. */
export function PlanResult({ plan, dateShown }: Of & { readonly dateShown: DateShown }) {
  return (
    <>
      <h3>{RESULT.detail}</h3>
      <WideTable caption={asksTitle(plan.years.at(-1)!.label)} {...askTable(plan)} />
      <WideTable
        caption={RESULT.years}
        {...yearTable(plan, showDay(dateShown))}
        note={plan.dueNow > 0 ? `${BAND_NOTE} ${DUE_NOTE}` : BAND_NOTE}
      />
      <Pictures plan={plan} />
      <FundingPart plan={plan} />
      <Rests plan={plan} dateShown={dateShown} />
      <Parts plan={plan} />
    </>
  );
}

function spokenResult(plan: ShownPlan): string {
  const [first, last] = [plan.years[0]!.label, plan.years.at(-1)!.label];
  const net = netInAll(plan);
  const { currency } = plan.settings.money;
  const money = net === undefined ? undefined : `${shownMoney(net)} ${currency}`.trim();
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

function Rests({ plan, dateShown }: Of & { readonly dateShown: DateShown }) {
  return (
    <>
      <h3>{RESULT.rests}</h3>
      <p>{lifeSentence(plan)}</p>
      <p>{restsOnSentence(plan)}</p>
      <p>{ageSentence(plan)}</p>
      {plan.ownPast[0] && <p>{pastSentence(plan.ownPast[0], dateShown)}</p>}
      <details>
        <summary>{RESULT.method}</summary>
        {methodSentences({ plan, settings: { dateShown } }).map((sentence) => (
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
          note={`${TYPES_AS_WRITTEN} ${BANDS_DO_NOT_ADD}`}
        />
      </details>
    </>
  );
}
