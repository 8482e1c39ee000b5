import { weibullLife } from '../../../src/life/parametricLife.ts';
import { breakEvenFailureCost } from '../../../src/life/breakEvenFailureCost.ts';
import type { Settings } from '../../../src/inventory/settings.ts';
import type { ShownPlan } from '../../computing/planAnswer.ts';
import { giveSetting } from '../../actions/giveSetting.ts';
import { ChoiceSetting, LabelledControl, NumberSetting, TickSetting } from '../../parts/settingField.tsx';
import type { Session } from '../../session.ts';
import { settingsInForce } from '../../session.ts';
import { wholeNumber } from '../../shownNumber.ts';
import {
  GROUPS,
  LEAST_COST_WAITS,
  leastCostSentence,
  NEVER_PAYS,
  PAYS_NEEDS_PRICE,
  paysSentence,
  POLICIES,
  RENEWAL,
} from '../../text/planText.ts';

/** Age that is offered first where a planned one is chosen [months]: a common round figure, to be changed. */
const FIRST_AGE = 48;

/** When batteries are renewed, alone or as sets, and whose life is counted apart. */
export function PolicyFields({ session }: { readonly session: Session }) {
  const { policy } = settingsInForce(session);
  return (
    <>
      <PolicyChoice session={session} policy={policy} />
      {typeof policy === 'object' && (
        <NumberSetting
          session={session}
          path="policy.age"
          label={RENEWAL.plannedAge}
          hint={RENEWAL.plannedAgeHint}
        />
      )}
      {policy !== 'failure' && (
        <NumberSetting
          session={session}
          path="overdueMonths"
          label={RENEWAL.overdueMonths}
          hint={RENEWAL.overdueMonthsHint}
        />
      )}
      {session.plan.value !== undefined && <PaysLine plan={session.plan.value} />}
      <TickSetting
        session={session}
        path="wholeSets"
        label={RENEWAL.wholeSets}
        hint={RENEWAL.wholeSetsHint}
      />
      <ChoiceSetting
        session={session}
        path="groupBy"
        label={RENEWAL.groupBy}
        hint={RENEWAL.groupByHint}
        choices={GROUPS}
      />
    </>
  );
}

function PolicyChoice({
  session,
  policy,
}: {
  readonly session: Session;
  readonly policy: Settings['policy'];
}) {
  const take = (word: string): void =>
    void giveSetting(session, 'policy', word === 'age' ? { age: FIRST_AGE } : word);
  return (
    <LabelledControl label={RENEWAL.policy} hint={undefined} wrong={undefined}>
      {(props) => (
        <select
          {...props}
          value={typeof policy === 'object' ? 'age' : policy}
          onChange={({ currentTarget }) => take(currentTarget.value)}
        >
          {POLICIES.map(([word, words]) => (
            <option key={word} value={word}>
              {words}
            </option>
          ))}
        </select>
      )}
    </LabelledControl>
  );
}

function PaysLine({ plan }: { readonly plan: ShownPlan }) {
  const sentences = paysSentences(plan);
  return sentences.length === 0 ? null : <p class="note">{sentences.join(' ')}</p>;
}

/** From which cost of a failure on renewal by age pays; nothing where batteries are renewed on failure. */
function paysSentences({ settings, plannedAge, life }: ShownPlan): string[] {
  const { policy, money } = settings;
  if (policy === 'failure') return [];
  if (plannedAge === Infinity) return [LEAST_COST_WAITS];
  const age = policy === 'leastCost' ? [leastCostSentence(wholeNumber(plannedAge))] : [];
  if (money.unitPrice === null) return [...age, PAYS_NEEDS_PRICE];
  const planned = money.unitPrice + money.freight + money.labour;
  const failure = breakEvenFailureCost(weibullLife(life.shape, life.scale), plannedAge, planned);
  if (failure === Infinity) return [...age, NEVER_PAYS];
  const beside = Math.max(0, failure - planned);
  return [...age, paysSentence(wholeNumber(plannedAge), wholeNumber(beside), money.currency)];
}
