import type { ShownPlan } from '../../computing/planAnswer.ts';
import { shownMoney, signed, wholeNumber } from '../../shownNumber.ts';
import type { Table } from './tables.ts';
import { netInAll, netOf, unitsInAll } from './tables.ts';
import { ALL_YEARS, COMPARE, NO_PRICE } from '../../text/planText.ts';

/** Units and money of one fiscal year; undefined = the plan doesn't reach it, or has no price. */
type Figures = { readonly units: number | undefined; readonly net: number | undefined };

/** A kept plan beside the one that stands now, and what the change makes: units and money by fiscal year. */
export function compareTable(name: string, kept: ShownPlan, now: ShownPlan): Table {
  const years = [...new Set([...kept.years, ...now.years].map(({ label }) => label))];
  const columns = ['units', 'net money'].flatMap((what) =>
    [`${name}: ${what}`, `${COMPARE.now}: ${what}`, `${COMPARE.difference}: ${what}`].map((text) => ({
      text,
      number: true,
    })),
  );
  return {
    heads: [{ text: 'Fiscal year' }, ...columns],
    rows: years.map((label) => cells(label, figuresOf(kept, label), figuresOf(now, label))),
    total: cells(ALL_YEARS, inAll(kept), inAll(now)),
  };
}

function figuresOf(plan: ShownPlan, label: string): Figures {
  const year = plan.years.find((each) => each.label === label);
  return { units: year?.order.unitsToOrder, net: year && netOf(year, plan) };
}

const inAll = (plan: ShownPlan): Figures => ({ units: unitsInAll(plan), net: netInAll(plan) });

function cells(label: string, kept: Figures, now: Figures): string[] {
  return [
    label,
    ...three(kept.units, now.units, '–', wholeNumber),
    ...three(kept.net, now.net, NO_PRICE, shownMoney),
  ];
}

function three(
  kept: number | undefined,
  now: number | undefined,
  nothing: string,
  format: (value: number) => string,
): string[] {
  const shown = (value: number | undefined): string => (value === undefined ? nothing : format(value));
  const difference = kept === undefined || now === undefined ? '–' : signed(now - kept, format);
  return [shown(kept), shown(now), difference];
}
