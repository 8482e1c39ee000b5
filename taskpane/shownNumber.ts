/** Numbers as the pane shows them: thousands apart, no minus before a zero. */
const shown = (digits: number) => {
  const format = new Intl.NumberFormat('en', {
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  });
  return (value: number): string => format.format(value).replace(/^-(?=[0.,]*$)/, '');
};

const [none, one, two] = [shown(0), shown(1), shown(2)];

/** A count. */
export const wholeNumber = none;

/** Money to the cent, as it is counted, so that a column adds up to its total. */
export const shownMoney = two;

/** An expected count, to one decimal. */
export const oneDecimal = one;

/** A difference, with its sign. */
export function signed(value: number, format: (value: number) => string = none): string {
  const text = format(value);
  return value > 0 && /[1-9]/.test(text) ? `+${text}` : text;
}

/** A chance or share in per cent; the ends are not rounded to certainty. */
export function perCent(share: number): string {
  if (share > 0 && share < 0.005) return 'under 1 %';
  if (share < 1 && share >= 0.995) return 'over 99 %';
  return `${none(share * 100)} %`;
}
