const known = new Map<string, boolean>();

/** Whether a number format shows a date or a time: letters of one outside quotes, escapes and brackets. */
export function isDateFormat(code: string): boolean {
  const found = known.get(code);
  if (found !== undefined) return found;
  const bare = code.replace(/"[^"]*"|\\.|_.|\*./g, '').replace(/\[(?!h+\]|m+\]|s+\])[^\]]*\]/gi, '');
  const isDate = !/general/i.test(bare) && /[ymdhs]/i.test(bare);
  known.set(code, isDate);
  return isDate;
}
