import { MONTH_NAMES } from '../../../src/basics/calendar.ts';
import { FoldedPart } from '../../parts/foldedPart.tsx';
import { ChoiceSetting, NumberSetting, TextSetting } from '../../parts/settingField.tsx';
import type { Session } from '../../session.ts';
import { settingsInForce } from '../../session.ts';
import { wholeNumber } from '../../shownNumber.ts';
import {
  backState,
  fleetState,
  moneyState,
  orderingState,
  renewalState,
  requestState,
  stockState,
} from './inputStates.ts';
import { ListSetting } from './listSetting.tsx';
import { PolicyFields } from './policyFields.tsx';
import {
  ASK_CHOICES,
  BACK,
  CHARGE_CHOICES,
  FISCAL_LABELS,
  LIST,
  MONEY,
  ORDERING,
  REQUEST,
  SECTIONS,
  STOCK,
} from '../../text/planText.ts';

type Of = { readonly session: Session };

const MONTH_CHOICES = MONTH_NAMES.map((name, index) => [index + 1, name] as const);

/** Everything that a planner may choose, the most used first; each part says folded what holds in it. */
export function PlanInputs({ session }: Of) {
  const settings = settingsInForce(session);
  const usable = session.plan.value?.usableStock;
  return (
    <div class="planInputs">
      <FoldedPart title={SECTIONS.request} state={requestState(settings)}>
        <RequestFields session={session} />
      </FoldedPart>
      <FoldedPart title={SECTIONS.money} state={moneyState(settings)}>
        <MoneyFields session={session} />
      </FoldedPart>
      <FoldedPart title={SECTIONS.stock} state={stockState(settings, usable)}>
        <StockFields session={session} />
      </FoldedPart>
      <FoldedPart title={SECTIONS.ordering} state={orderingState(settings)}>
        <NumberSetting session={session} path="leadMonths" label={ORDERING.leadMonths} />
        <NumberSetting session={session} path="safetyMonths" label={ORDERING.safetyMonths} />
      </FoldedPart>
      <FoldedPart title={SECTIONS.renewal} state={renewalState(settings)}>
        <PolicyFields session={session} />
      </FoldedPart>
      <FoldedPart title={SECTIONS.back} state={backState(settings)}>
        <BackFields session={session} />
      </FoldedPart>
      <FoldedPart title={SECTIONS.fleet} state={fleetState(settings)}>
        <FleetFields session={session} />
      </FoldedPart>
    </div>
  );
}

function RequestFields({ session }: Of) {
  return (
    <>
      <ChoiceSetting
        session={session}
        path="ask"
        label={REQUEST.ask}
        hint={REQUEST.askHint}
        choices={ASK_CHOICES}
      />
      <NumberSetting session={session} path="years" label={REQUEST.years} hint={REQUEST.yearsHint} />
      <ChoiceSetting
        session={session}
        path="fiscalFirstMonth"
        label={REQUEST.fiscalFirstMonth}
        choices={MONTH_CHOICES}
      />
      <ChoiceSetting
        session={session}
        path="fiscalLabel"
        label={REQUEST.fiscalLabel}
        choices={FISCAL_LABELS}
      />
      <ChoiceSetting session={session} path="chargeTo" label={REQUEST.chargeTo} choices={CHARGE_CHOICES} />
    </>
  );
}

function MoneyFields({ session }: Of) {
  return (
    <>
      <div class="pair">
        <NumberSetting
          session={session}
          path="money.unitPrice"
          label={MONEY.unitPrice}
          hint={MONEY.unitPriceHint}
        />
        <TextSetting
          session={session}
          path="money.currency"
          label={MONEY.currency}
          hint={MONEY.currencyHint}
        />
      </div>
      <div class="pair">
        <NumberSetting session={session} path="money.rise" label={MONEY.rise} percent />
        <NumberSetting session={session} path="money.refund" label={MONEY.refund} />
      </div>
      <div class="pair">
        <NumberSetting session={session} path="money.freight" label={MONEY.freight} />
        <NumberSetting session={session} path="money.labour" label={MONEY.labour} />
      </div>
      <NumberSetting
        session={session}
        path="money.failureCost"
        label={MONEY.failureCost}
        hint={MONEY.failureCostHint}
      />
    </>
  );
}

function StockFields({ session }: Of) {
  const usable = session.plan.value?.usableStock;
  return (
    <>
      <dl>
        <dt>{STOCK.usable}</dt>
        <dd>{usable === undefined ? '…' : wholeNumber(usable)}</dd>
        <dd>
          <small>{STOCK.usableHint}</small>
        </dd>
      </dl>
      <NumberSetting session={session} path="stockTarget" label={STOCK.stockTarget} />
      <ListSetting
        session={session}
        path="onOrder"
        legend={STOCK.onOrder}
        add={LIST.addOrder}
        nothing={STOCK.noOrders}
      />
    </>
  );
}

function BackFields({ session }: Of) {
  return (
    <>
      <NumberSetting
        session={session}
        path="recovered"
        label={BACK.recovered}
        hint={BACK.recoveredHint}
        percent
      />
      <NumberSetting session={session} path="matesReused" label={BACK.matesReused} percent />
    </>
  );
}

function FleetFields({ session }: Of) {
  const sites = session.reading.value?.sites ?? [];
  const types = session.plan.value?.types.map(({ name }) => name) ?? [];
  return (
    <ListSetting
      session={session}
      path="fleetChanges"
      legend={LIST.changes}
      add={LIST.addChange}
      nothing={LIST.noChanges}
      more={
        <div class="pair">
          <PartChoice name="site" label={LIST.site} parts={sites} />
          <PartChoice name="type" label={LIST.type} parts={types} />
        </div>
      }
    />
  );
}

function PartChoice({
  name,
  label,
  parts,
}: {
  readonly name: string;
  readonly label: string;
  readonly parts: readonly string[];
}) {
  return (
    <label>
      {label}
      <select name={name}>
        <option value="">{LIST.any}</option>
        {parts
          .filter((part) => part !== '')
          .map((part) => (
            <option key={part} value={part}>
              {part}
            </option>
          ))}
      </select>
    </label>
  );
}
