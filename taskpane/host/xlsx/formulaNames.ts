/** How a file names functions that came after its format: names of ours, of 2010 and later, of arrays. */
const OURS = '_xldudf_CRANK_';
const LATER = '_xlfn.';
const SHEET_LATER = '_xlfn._xlws.';
const PARAMETER = '_xlpm.';

// [MS-XLSX] 2.2.2 lists them as future functions.
const LATER_NAMES = new Set(
  (
    'ACOT ACOTH AGGREGATE ARABIC ARRAYTOTEXT BASE BETA.DIST BETA.INV BINOM.DIST BINOM.DIST.RANGE BINOM.INV BITAND ' +
    'BITLSHIFT BITOR BITRSHIFT BITXOR BYCOL BYROW CEILING.MATH CEILING.PRECISE CHISQ.DIST CHISQ.DIST.RT CHISQ.INV ' +
    'CHISQ.INV.RT CHISQ.TEST CHOOSECOLS CHOOSEROWS COMBINA CONCAT CONFIDENCE.NORM CONFIDENCE.T COT COTH COVARIANCE.P ' +
    'COVARIANCE.S CSC CSCH DAYS DECIMAL DROP ENCODEURL ERF.PRECISE ERFC.PRECISE EXPAND EXPON.DIST F.DIST F.DIST.RT ' +
    'F.INV F.INV.RT F.TEST FILTERXML FLOOR.MATH FLOOR.PRECISE FORECAST.ETS FORECAST.ETS.CONFINT ' +
    'FORECAST.ETS.SEASONALITY FORECAST.ETS.STAT FORECAST.LINEAR FORMULATEXT GAMMA GAMMA.DIST GAMMA.INV ' +
    'GAMMALN.PRECISE GAUSS GROUPBY HSTACK HYPGEOM.DIST IFNA IFS IMAGE IMCOSH IMCOT IMCSC IMCSCH IMSEC IMSECH IMSINH ' +
    'IMTAN ISFORMULA ISOMITTED ISOWEEKNUM LAMBDA LET LOGNORM.DIST LOGNORM.INV MAKEARRAY MAP MAXIFS MINIFS MODE.MULT ' +
    'MODE.SNGL MUNIT NEGBINOM.DIST NORM.DIST NORM.INV NORM.S.DIST NORM.S.INV NUMBERVALUE PDURATION PERCENTILE.EXC ' +
    'PERCENTILE.INC PERCENTOF PERCENTRANK.EXC PERCENTRANK.INC PERMUTATIONA PHI PIVOTBY POISSON.DIST QUARTILE.EXC ' +
    'QUARTILE.INC RANDARRAY RANK.AVG RANK.EQ REDUCE REGEXEXTRACT REGEXREPLACE REGEXTEST RRI SCAN SEC SECH SEQUENCE ' +
    'SHEET SHEETS SKEW.P SORTBY STDEV.P STDEV.S SWITCH T.DIST T.DIST.2T T.DIST.RT T.INV T.INV.2T T.TEST TAKE ' +
    'TEXTAFTER TEXTBEFORE TEXTJOIN TEXTSPLIT TOCOL TOROW TRIMRANGE UNICHAR UNICODE UNIQUE VALUETOTEXT VAR.P VAR.S ' +
    'VSTACK WEBSERVICE WEIBULL.DIST WRAPCOLS WRAPROWS XLOOKUP XMATCH XOR Z.TEST'
  ).split(' '),
);
const SHEET_LATER_NAMES = new Set(['FILTER', 'SORT']);

/** Texts, quoted sheet names and structured references: nothing in them is a function. */
const QUOTED = /("(?:[^"]|"")*"|'(?:[^']|'')*'|\[(?:[^[\]]|\[[^\]]*\])*\])/;

/** A formula with something done to what stands outside of quotes and brackets. */
export const outsideQuotes = (formula: string, change: (piece: string) => string): string =>
  formula
    .split(QUOTED)
    .map((piece, index) => (index % 2 === 1 ? piece : change(piece)))
    .join('');

/** Whether a formula asks a function of ours. */
export function asksOurs(formula: string): boolean {
  let found = false;
  outsideQuotes(formula, (piece) => {
    found ||= /(?<![\w.])CRANK\.[A-Z0-9]/i.test(piece) || piece.includes(OURS);
    return piece;
  });
  return found;
}

/** A formula as the grid writes it, from how the file does. */
export function formulaForGrid(formula: string): string {
  if (!formula.includes('_xl')) return formula;
  return outsideQuotes(formula, (piece) =>
    piece
      .replace(/(?:'?\[\d+\]!?'?)?_xldudf_CRANK_([A-Z0-9]+)/gi, 'CRANK.$1')
      .replace(/_xlfn\.(?:_xlws\.)?|_xlpm\./g, ''),
  );
}

/** A formula as the file writes it, from how the grid does. */
export function formulaForFile(formula: string): string {
  const named = outsideQuotes(formula, (piece) =>
    piece
      .replace(/(?<![\w.])CRANK\.([A-Z0-9]+)(?=\s*\()/gi, (_, name: string) => OURS + name.toUpperCase())
      .replace(/(?<![\w.])[A-Z][A-Z0-9.]*(?=\()/gi, fileName),
  );
  return parametersOf(formula).reduce(withPrefix, named);
}

function fileName(name: string): string {
  const upper = name.toUpperCase();
  if (SHEET_LATER_NAMES.has(upper)) return SHEET_LATER + upper;
  return LATER_NAMES.has(upper) ? LATER + upper : name;
}

const withPrefix = (formula: string, parameter: string): string =>
  outsideQuotes(formula, (piece) =>
    piece.replace(new RegExp(`(?<![\\w.])${parameter}(?![\\w.(!])`, 'gi'), PARAMETER + parameter),
  );

/** A call that is not closed yet, and which of its arguments is being read. */
type Call = { readonly name: string; readonly argument: number };

const next = ({ name, argument }: Call): Call => ({ name, argument: argument + 1 });

/** The names that LET and LAMBDA give, which a file marks too. */
function parametersOf(formula: string): string[] {
  const found = new Set<string>();
  const open: Call[] = [];
  for (const [token] of formula.matchAll(TOKEN)) {
    const last = open.at(-1);
    if (token.endsWith('(')) open.push({ name: token.slice(0, -1).trim().toUpperCase(), argument: 0 });
    else if (token === ')') open.pop();
    else if (token === ',') open.splice(-1, 1, ...open.slice(-1).map(next));
    else if (last !== undefined && names(last) && NAME.test(token)) found.add(token);
  }
  return [...found];
}

const TOKEN = /"(?:[^"]|"")*"|'(?:[^']|'')*'|\[[^\]]*\]|[A-Za-z_][\w.]*\s*\(|[A-Za-z_][\w.]*(?=\s*,)|[(),]/g;
const NAME = /^[A-Za-z_][\w.]*$/;

const names = ({ name, argument }: Call): boolean =>
  name === 'LAMBDA' || (name === 'LET' && argument % 2 === 0);
