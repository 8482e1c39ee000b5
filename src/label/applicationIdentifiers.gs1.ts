import type { ElementMeaning } from './labelElement.ts';

/** A GS1 application identifier: what stands behind it, and what must stand beside it. */
export type ApplicationIdentifier = ElementMeaning & {
  readonly shape: RegExp;
  /** Length that is known without a separator; none = up to the next separator. */
  readonly fixed?: number;
  /** How many figures from where on end with a check digit. */
  readonly checked?: readonly [from: number, figures: number];
  /** One of each list must stand in the symbol too. */
  readonly needs?: readonly (readonly string[])[];
};

const TRADE_ITEMS = ['01', '02', '03', '8006', '8026'];
const SINGLE_ITEMS = ['01', '03', '8006'];

const figures = (count: number): RegExp => new RegExp(`^\\d{${count}}$`);
// The 82 characters that GS1 allows in text.
const text = (most: number): RegExp => new RegExp(`^[!"%&'()*+,\\-./0-9:;<=>?A-Z_a-z]{1,${most}}$`);
const wholeFigures = (most: number): RegExp => new RegExp(`^\\d{1,${most}}$`);

const key = (name: string, length: number): ApplicationIdentifier => ({
  name,
  shape: figures(length),
  fixed: length,
  checked: [0, length],
});
const dated = (name: string): ApplicationIdentifier => ({
  ...{ name, shape: figures(6), fixed: 6, date: 'yyMMd0', needs: [TRADE_ITEMS] },
});
const item = (name: string, most: number): ApplicationIdentifier => ({
  ...{ name, shape: text(most), needs: [TRADE_ITEMS] },
});

/** GS1 application identifiers that a battery's label may hold, but for measures (3100 to 3699) and 91 to 99. */
export const APPLICATION_IDENTIFIERS: Readonly<Record<string, ApplicationIdentifier>> = {
  '00': key('shipping unit', 18),
  '01': key('trade item', 14),
  '02': { ...key('contained trade item', 14), needs: [['37']] },
  '03': key('made-to-order trade item', 14),
  '10': { ...item('lot', 20), role: 'lot' },
  '11': { ...dated('made'), role: 'made' },
  '13': dated('packed'),
  '15': dated('best before'),
  '17': dated('expires'),
  '20': { name: 'variant', shape: figures(2), fixed: 2, needs: [TRADE_ITEMS] },
  '21': { ...item('serial', 20), role: 'serial', needs: [SINGLE_ITEMS] },
  '22': item('consumer variant', 20),
  '240': { ...item('part', 30), role: 'part' },
  '241': item('customer part', 30),
  '250': { ...item('second serial', 30), needs: [SINGLE_ITEMS, ['21']] },
  '30': { name: 'count', shape: wholeFigures(8), needs: [TRADE_ITEMS] },
  '37': { name: 'count', shape: wholeFigures(8), needs: [['00', '02', '8026']] },
  '400': { name: 'order', shape: text(30) },
  '414': key('location', 13),
  '422': { name: 'origin', shape: figures(3), needs: [TRADE_ITEMS] },
  '7001': { name: 'stock number', shape: figures(13), role: 'stock', needs: [TRADE_ITEMS] },
  '8003': { name: 'returnable asset', shape: /^0\d{13}[!-z]{0,16}$/, checked: [1, 13] },
  '8004': { name: 'asset', shape: text(30) },
  '8006': { name: 'piece of a trade item', shape: figures(18), checked: [0, 14] },
  '8010': { name: 'component', shape: /^[#\-/0-9A-Z]{1,30}$/ },
  '8012': { name: 'software version', shape: text(20), needs: [SINGLE_ITEMS] },
  '8026': {
    ...{ name: 'contained pieces', shape: figures(18), checked: [0, 14] as const, needs: [['37']] },
  },
  '90': { name: 'internal 90', shape: text(30) },
};

const MEASURE = /^3[1-6]\d\d$/;
const INTERNAL = /^9[1-9]$/;

/** What an application identifier means, or undefined where it is none that is read here. */
export function applicationIdentifier(ai: string): ApplicationIdentifier | undefined {
  if (Object.hasOwn(APPLICATION_IDENTIFIERS, ai)) return APPLICATION_IDENTIFIERS[ai];
  if (MEASURE.test(ai))
    return { name: `measure ${ai}`, shape: figures(6), fixed: 6, needs: [['00', ...TRADE_ITEMS]] };
  return INTERNAL.test(ai) ? { name: `internal ${ai}`, shape: text(90) } : undefined;
}
