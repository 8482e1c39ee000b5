import { isoDay } from './calendar.ts';
import type { Facts, Problem } from './outcome.ts';
import { argumentsText, withDigits } from './wordedNumbers.ts';

/** How a reader sees what was given: text in quotes, a number as it is. */
export function shown(given: unknown): string {
  if (typeof given === 'string') return `"${given.length > 40 ? `${given.slice(0, 39)}…` : given}"`;
  if (typeof given === 'number') return String(Number(given.toPrecision(10)));
  if (typeof given === 'boolean') return given ? 'TRUE' : 'FALSE';
  return given === null || given === undefined ? 'nothing' : String(given);
}

const range = (facts: Facts): string =>
  facts.limits === undefined ? '' : `${facts.limits[0]} to ${facts.limits[1]}`;

const gravity = (facts: Facts): string => withDigits(facts.given, 3);

const dateText = (day: unknown): string => isoDay(Number(day));

const volts = (facts: Facts): string => `${withDigits(facts.given, 2)} V`;

/**
 * Every sentence about a problem stands here: what is wrong, what was given, what is allowed.
 * A new one goes under its room; its key is the `because` of the problem.
 */
const sentences = {
  // basics
  missing: (p) => `${p.argument} is missing`,
  notANumber: (p) => `${p.argument} must be a number; given ${shown(p.given)}`,
  outOfLimits: (p) => `${p.argument} is ${shown(p.given)}; allowed is ${range(p)}`,
  notAWord: (p) => `${p.argument} is ${shown(p.given)}; allowed are ${p.more?.allowed ?? ''}`,
  notADate: (p) =>
    `${p.argument} is ${shown(p.given)}; a date is a spreadsheet date or text such as 2026-03-15, years 1970 to 2100`,
  ambiguousDate: (p) =>
    `${p.argument} is ${shown(p.given)}, which reads two ways (day first or month first); write it as 2026-03-15`,
  shapesDiffer: (p) =>
    `the ranges must have one shape; given ${p.more?.first ?? ''} and ${p.more?.second ?? ''} (rows x columns)`,
  notOneColumn: (p) => `${p.argument} must be one column; given ${p.more?.columns ?? ''} columns`,
  oneValue: (p) => `${p.argument} takes one value, not a range`,
  argumentCount: (p) =>
    `${p.argument} takes ${argumentsText(Number(p.more?.least), Number(p.more?.most))}; given ${p.more?.given}`,
  noConvergence: (p) => `no stable answer was found for ${p.argument}`,
  // label
  notALayout: (p) =>
    `${p.argument} is ${shown(p.given)}; a layout is made of the pieces ${p.more?.allowed ?? ''}, upper and lower case as here, and names once each: a year with a month (MM, A or a12), or a year with ooo, or kk with WW`,
  notACode: (p) =>
    `${p.argument} is ${shown(p.given)}; a manufacture code is text such as 0324-117 (up to 60 characters) or a whole number`,
  codeNotInLayout: (p) =>
    `${p.argument} is ${shown(p.given)}, which does not fit the layout ${p.more?.layout ?? ''}; a code in it looks like ${p.more?.example ?? ''}`,
  codeMonth: (p) =>
    `${p.argument} is ${shown(p.given)}: its month is ${p.more?.month ?? ''}; allowed is 01 to 12`,
  codeLetter: (p) =>
    `${p.argument} is ${shown(p.given)}: the letter ${p.more?.letter ?? ''} is no month; allowed is ${p.more?.allowed ?? ''}`,
  codeNoSuchDay: (p) =>
    `${p.argument} is ${shown(p.given)}: the calendar has no ${p.more?.date ?? ''}; check the code and the layout`,
  codeTooOld: (p) =>
    `${p.argument} is ${shown(p.given)}: ${p.more?.later ?? ''} is after as-of, ${p.more?.earlier ?? ''} is ${p.more?.years ?? ''} years old; allowed is ${range(p)}`,
  codeOutside: (p) =>
    `${p.argument} is ${shown(p.given)}, which says ${p.more?.date ?? ''}; allowed is ${range(p)}`,
  makerCodeText: (p) =>
    `${p.argument} is ${shown(p.given)}; a maker code is five letters and digits, such as 9ZZ98`,
  makerCodeLength: (p) =>
    `${p.argument} is ${shown(p.given)}, which has ${p.more?.length ?? ''} characters; a maker code must be 5 (has a sheet eaten a leading zero? format the cell as text)`,
  makerCodeDamaged: (p) =>
    `${p.argument} is ${shown(p.given)}: a sheet makes such a number of a code like 1E234; format the cell as text and type the code again`,
  makerCodeUs: (p) =>
    `${p.argument} is ${shown(p.given)}; a maker code with a digit first and last may not hold I or O`,
  makerCodeO: (p) => `${p.argument} is ${shown(p.given)}; a maker code may not hold the letter O`,
  makerCodeEnds: (p) =>
    `${p.argument} is ${shown(p.given)}; a maker code that begins with I, L or S must end with a digit`,
  stockNumberLength: (p) =>
    `${p.argument} is ${shown(p.given)}, which has ${p.more?.length ?? ''} characters; a stock number must be 13, written 4-2-3-4`,
  stockNumberShape: (p) =>
    `${p.argument} is ${shown(p.given)}; a stock number is 13 characters written 4-2-3-4, digits only but for the seventh, which may be a letter`,
  stockNumberRounded: (p) =>
    `${p.argument} is ${shown(p.given)}: a sheet has made a number of it and its last figures are lost; format the cell as text and type it again`,
  bureauUnknown: (p) =>
    `${p.argument} is ${shown(p.given)}; the country of codification bureau ${p.more?.bureau ?? ''} is not in the list here`,
  notASymbol: (p) =>
    `${p.argument} is ${shown(p.given)}; allowed is the text of an ISO/IEC 15434 or GS1 symbol, a stock number, a code such as 0324-117, or a serial of up to 50 letters, digits and - / .`,
  strayControls: (p) =>
    `${p.argument} is ${shown(p.given)}, with control characters that are on no label: switch off what the scanner adds around its text, or type the serial`,
  markWithoutFields: (p) =>
    `${p.argument} is ${shown(p.given)}: ${p.more?.mark ?? ''} says that it is a GS1 symbol, and no GS1 field follows; switch off the scanner's prefix (AIM or symbology identifier), or type the serial`,
  separatorBehind: (p) =>
    `${p.argument} is ${shown(p.given)}: with a separator behind it, it would be a GS1 field, and it is none; switch off the scanner's suffix, or type the serial`,
  envelopeHeader: (p) =>
    `${p.argument} is ${shown(p.given)}, whose header is damaged: it must begin [)><RS>06<GS>; set the scanner to send the control characters, or to spell them <RS>, <GS>, <EOT>`,
  envelopeOpen: (p) =>
    `${p.argument} is ${shown(p.given)}, whose envelope is not closed: it must end <RS><EOT>; scan it again`,
  envelopeFormat: (p) =>
    `${p.argument} is ${shown(p.given)}: format ${p.more?.format ?? ''} is not used here; allowed are 05, 06 and 12`,
  fieldUnknown: (p) =>
    `${p.argument} holds ${shown(p.given)}, which begins with no data identifier or text element`,
  fieldTwice: (p) =>
    `${p.argument} stands twice: ${shown(p.given)} and ${shown(p.more?.other)}; it is allowed once`,
  fieldShape: (p) =>
    `${p.argument} is ${shown(p.given)}, which has characters or a length that are not allowed there`,
  symbolDate: (p) =>
    `${p.argument} is ${shown(p.given)}: there is no such date, written ${p.more?.layout ?? ''}, in the years 1970 to 2100`,
  checkDigit: (p) => `${p.argument} is ${shown(p.given)}; its check digit should be ${p.more?.digit ?? ''}`,
  aiNeeds: (p) =>
    `${p.argument} is ${shown(p.given)}: AI ${p.more?.ai ?? ''} needs ${p.more?.needed ?? ''} beside it in the symbol`,
  aiUnknown: (p) =>
    `${p.argument} holds ${shown(p.given)}, which begins with no GS1 application identifier (AI) that is read here`,
  noUniqueId: (p) =>
    `${p.argument} is ${shown(p.given)} without ${p.more?.lacking ?? ''}: no unique item id (UII) can be built`,
  uniqueIdCharacters: (p) =>
    `${p.argument} is ${shown(p.given)}; only A-Z 0-9 - / may stand in a unique item id (UII)`,
  uniqueIdLength: (p) =>
    `${p.argument} is ${shown(p.given)}, longer than the ${p.more?.most ?? ''} characters allowed`,
  notOneSymbol: (p) =>
    `without field one symbol is allowed, given ${p.more?.count ?? ''}; name a field to fill a column`,
  // service
  installedLater: (p) =>
    `installed is ${dateText(p.given)}, later than until (${dateText(p.more?.until)}); a battery can't leave before it is fitted`,
  madeLater: (p) =>
    `made is ${dateText(p.given)}, later than until (${dateText(p.more?.until)}); a battery can't be fitted before it is made`,
  monthsOutLimits: (p) =>
    `monthsOut is ${shown(p.given)}; allowed is ${range(p)}, no more than the whole time since installation`,
  wholeFirstMonth: (p) => `firstMonth is ${shown(p.given)}; allowed are whole months, ${range(p)}`,
  // electrochemistry
  temperatureLimits: (p) =>
    `temperature is ${shown(p.given)} C; allowed is ${range(p)} C; for degrees Fahrenheit give the unit "F"`,
  wholeSet: (p) =>
    `${volts(p)} is the voltage of a whole 24 V set: measure each battery by itself (6 to 16 V)`,
  notRested: (p) =>
    `${volts(p)} is a battery on charge, on float or not rested: disconnect it, rest 3 h at least, 8 h better, and read again`,
  deadCell: (p) =>
    `${volts(p)} is under 11.3 V: deeply discharged or a dead cell; charge it alone, rest it 8 h and read again`,
  asGoodAsWater: (p) => `${volts(p)} is under 11.3 V: its acid is as good as water: keep it above 0 C`,
  gravityLimits: (p) =>
    `a specific gravity is ${shown(p.given)}; allowed is ${range(p)}, written like 1.265 and not 1265`,
  acidTooStrong: (p) =>
    `${gravity(p)} (corrected to 80 F) is over 1.300, stronger than the acid of a full battery: was acid added, is the temperature right?`,
  acidNearlyWater: (p) =>
    `${gravity(p)} (corrected to 80 F) is under 1.030, nearly water: deeply discharged or a dead cell`,
  tooFewCells: (p) => `readings in the row: ${shown(p.given)}; needed are those of two to six cells`,
  tooManyCells: (p) => `readings in the row: ${shown(p.given)}; allowed are two to six cells of one battery`,
  // cranking
  typeNotKnown: (p) =>
    `no published figure is known here for ${p.argument} ${shown(p.given)}; known: ${p.more?.known ?? ''}; otherwise take the amperes from the label`,
  outsideCrankingGuide: (p) => `temperature is ${shown(p.given)} C; the guide covers ${range(p)} C only`,
  tooColdForLoadTest: (p) =>
    `temperature is ${shown(p.given)} C; the load-test table ends at -18 C: warm the battery and test again`,
  ratingsNotPaired: (p) =>
    `no published conversion is known for ${shown(p.given)}; known, both ways: ${p.more?.known ?? ''}`,
  jisRank: (p) =>
    `no conversion for ${shown(p.given)}: a JIS performance rank is no number of amperes; known, both ways: ${p.more?.known ?? ''}`,
  nothingToJudge: () =>
    'reading, volts and damage are all missing; give a cranking reading, a rest voltage or the damage',
  leastMissing: () =>
    'least is missing; give the least reading that you accept for this use, in the unit of the reading (for a load test LOADTESTFLOOR of the temperature)',
  unitsMixed: (p) =>
    `reading is ${shown(p.given)} and least is ${p.more?.least ?? ''}, one in volts (under 16) and one in amperes; give both in amperes, or both in volts at the end of a load test`,
  tooFewTests: (p) => `cranking tests: ${shown(p.given)}; a trend needs ${p.more?.least ?? ''} or more`,
  testsTooClose: (p) =>
    `days between the first and the last test: ${shown(p.given)}; a trend needs ${p.more?.least ?? ''} or more`,
  testAfterAsOf: (p) =>
    `a test is dated ${dateText(p.given)}, later than as-of (${dateText(p.more?.asOf)}); leave it out, or take a later as-of`,
  // storage
  negativeDays: (p) => `days is ${shown(p.given)}; allowed is 0 or more`,
  notWholeMonths: (p) => `mostMonths is ${shown(p.given)}; allowed are whole months, 1 to 60`,
  // bench: readings as they are typed
  voltsWritten: (p) =>
    `${p.argument} is ${shown(p.given)}; allowed is ${range(p)} V, written like ${p.more?.like ?? ''}, not ${p.more?.not ?? ''} and not ${p.more?.not ?? ''}0 mV`,
  voltsAmongAmperes: (p) =>
    `${p.argument} is ${shown(p.given)}; allowed is 0, or 16 to 10000 A; volts at the end of a load test go into the field for them`,
  // bench: which battery is meant
  noRowSelected: () =>
    "the selected cell is in no row of a battery; choose a cell of its row in the inventory's sheet, or type the serial",
  labelWithoutSerial: (p) =>
    `the symbol ${shown(p.given)} names no serial; scan the other symbol of the label, or type the serial`,
  // life: records and fits
  impossibleLife: (p) =>
    `life ${p.more?.row ?? ''} can't be: ${p.more?.kind ?? ''}, under record from ${shown(p.more?.entry)}, ages ${shown(p.more?.from)} to ${shown(p.more?.to)}, count ${shown(p.more?.count)}; ages are 0 or more, and each comes after the one before it`,
  noFailures: () =>
    'no failure is on record, so the records alone say nothing about how long a battery lasts',
  oneAgeFitsAll: () =>
    "all failures lie at the oldest age on record, or one age agrees with every record: the shape can't be told from the records alone",
  noWearSeen: () => 'the records show no wear-out that a life curve could follow; see the life table instead',
  mustBeAboveZero: (p) => `${p.argument} is ${shown(p.given)}; allowed is any number above 0`,
  mustNotBeNegative: (p) => `${p.argument} is ${shown(p.given)}; allowed is 0 or more`,
  mustBeProperShare: (p) => `${p.argument} is ${shown(p.given)}; allowed is above 0 and below 1`,
  rulesContradict: (p) =>
    `${shown(p.more?.share1)} failed by ${shown(p.more?.month1)} months and ${shown(p.more?.share2)} by ${shown(p.more?.month2)} contradict each other; the larger age must go with the larger share`,
  agesNotExact: () =>
    'some failures are known only between two ages; this figure needs failures of known age',
  noLives: () => 'no life is on record: every row is empty, has an age of 0, or came under record today',
  lateRecords: () =>
    'some lives came under record late; this test needs lives seen from new: compare the likelihoods instead',
  oneGroup: () => 'two groups at least are needed to compare',
  groupWithoutLife: (p) =>
    `group ${shown(p.given)} has too few failures for a life of its own, or all of them at its oldest age`,
  covariatesDiffer: (p) =>
    `life ${shown(p.given)} has another number of covariates than the first, or one that is no number`,
  covariateConstant: () => "a covariate is the same for every life: its effect can't be told",
  effectUnbounded: () =>
    'the effect of a covariate has no bounds: nothing failed in one of its groups, or covariates repeat each other',
  tooFewForLognormal: (p) =>
    `${shown(p.given)} failures are too few for a lognormal life; needed are 5 (the "weibull" model answers with fewer, from the usual belief and the records together)`,
  failedNotYesOrNo: (p) =>
    `failed in row ${p.more?.row ?? ''} of the range is ${shown(p.given)}; allowed are 1 or TRUE (removed because it failed), 0, FALSE or blank (still in service, or removed for another reason)`,
  negativeMonths: (p) =>
    `${p.argument} in row ${p.more?.row ?? ''} of the range is ${shown(p.given)}; allowed is 0 or more`,
  recordStartsTooLate: (p) =>
    `ageAtRecordStart in row ${p.more?.row ?? ''} of the range is ${shown(p.given)}, not under its months (${shown(p.more?.months)}); a life must come under record before it ends`,
  waitingIsCheaper: () =>
    'waiting for failure is always cheaper: with so little wear-out, or at these costs, planned replacement throws good batteries away',
  waitingNotDearer: () =>
    'waiting for failure is always cheaper: a failure in service must cost more than a planned replacement',
  // life and planning: beliefs, forecasts, stock
  priorFigure: (p) =>
    `a figure of the rule of thumb is ${shown(p.given)}; its age, its spread and its wear-out must each be above 0`,
  wholeCount: (p) => `${p.argument} holds ${shown(p.given)}; allowed are whole numbers, 0 or more`,
  wholePeriods: (p) => `${p.argument} is ${shown(p.given)}; allowed are whole numbers from ${range(p)}`,
  lifeBlockShape: (p) =>
    `life is ${p.more?.rows ?? ''} x ${p.more?.columns ?? ''} cells; allowed are two cells, shape and scale, or rows of two or three columns: months, failed and perhaps ageAtRecordStart`,
  // spreadsheet hosts
  sheetNotThere: (p) =>
    `there is no sheet ${shown(p.given)} any more; it may have been renamed or deleted: choose the sheet again`,
  sheetNameTaken: (p) =>
    `a sheet named ${shown(p.given)} is there already, and nothing was written: rename or delete that sheet first`,
  sheetProtected: (p) =>
    `the sheet ${shown(p.given)} is protected, and nothing was written: take the protection off, or work in a copy`,
  cellsNotEmpty: (p) =>
    `${p.more?.count === 1 ? 'a cell is' : `${p.more?.count ?? ''} cells are`} not empty in ${p.more?.block ?? ''} of the sheet ${shown(p.given)}, and nothing was written: choose other columns, or allow them to be overwritten`,
  tableNotThere: (p) =>
    `the sheet has no table ${shown(p.given)} any more, and nothing was written: choose the table again`,
  columnsNotBesideTable: (p) =>
    `the new columns must lie in the table ${shown(p.given)} or directly at its right side (column ${p.more?.beside ?? ''}), and nothing was written`,
  rowsNotOfTable: (p) =>
    `the rows to be filled are not those of the table ${shown(p.given)}, and nothing was written: read the inventory again`,
  answerHasNoRoom: (p) =>
    `the formula in ${p.more?.cell ?? ''} of the sheet ${shown(p.given)} has no room for its answers, and nothing was written: empty the cells under and beside it`,
  sheetHidden: (p) => `the sheet ${shown(p.given)} is hidden; show it first, then go there again`,
  copyByHand: () =>
    'Excel would open a copy in another window and leave this pane at the original: choose File, Save a Copy, open the copy and open the pane there',
  formulasIn1904: () =>
    'this workbook counts its dates from 1904, and live formulas of ours would be four years wrong: fill the columns as values',
  excelTooOld: (p) =>
    `this version of Excel is too old for the pane (it lacks ${p.more?.message ?? ''}): update Excel, or use Excel in a browser`,
  excelEditing: () =>
    'a cell is being edited in Excel: finish with Enter or Esc, then do it again; the workbook is as it was',
  excelTooLarge: () =>
    'Excel refused so much at once, and the workbook is as it was: choose fewer rows or columns, or use Excel on a computer in place of a browser',
  excelLost: () =>
    'the connection to Excel was lost, and the workbook is as it was: wait a moment, then do it again; if that does not help, close the workbook and open it again',
  excelProtected: () =>
    'Excel does not allow changes here (a sheet or the workbook is protected, or opened for reading only), and the workbook is as it was: take the protection off, or save a copy and work there',
  excelStructureProtected: () =>
    'the structure of the workbook is protected, so no sheet can be added: take the protection off (Review, Protect Workbook), or save a copy and work there',
  excelRefused: (p) =>
    `Excel could not do this (${p.given}: ${p.more?.message ?? ''}), and the workbook is as it was: do it again; if that does not help, report this sentence`,
  excelLeftBehind: (p) =>
    `writing failed half way (${p.more?.message ?? ''}) and could not be taken back: look at ${shown(p.given)} in the workbook, and delete it or undo (Ctrl+Z)`,
  stillThere: (p) => `${p.more?.message ?? ''}. Written before that, and still there: ${String(p.given)}`,
  // files
  oldFileKind: (p) =>
    `${p.given} is a kind of file that is not read here; open it in a spreadsheet program and save it as .xlsx`,
  unknownFileKind: (p) => `${p.given} is not read here; allowed are .xlsx and .csv`,
  emptyFile: (p) => `the file ${p.given} is empty; choose the one that holds the inventory`,
  encryptedFile: (p) =>
    `${p.given} is encrypted with a password, or is an old .xls under a new name; open it in a spreadsheet program and save it as .xlsx without a password`,
  notAWorkbook: (p) =>
    `${p.given} can't be read as a workbook: it is damaged or is no .xlsx; open it in a spreadsheet program and save it as .xlsx`,
  csvIsWorkbook: (p) => `${p.given} is a workbook under the name of a .csv; rename it to .xlsx`,
  // pictures of labels
  pictureTooManyBytes: (p) =>
    `the picture is a file of ${(Number(p.given) / 1e6).toFixed(1)} MB; allowed are up to ${p.limits?.[1] ?? ''} MB: cut it to the label`,
  pictureTooManyPixels: (p) =>
    `the picture is ${p.given} pixels; allowed are up to ${p.limits?.[1] ?? ''} million: cut it to the label`,
  notAPicture: () => 'this file is not a picture that can be read here; allowed are PNG, JPEG, GIF and BMP',
  pictureCutShort: () => 'the picture is cut short: its end is missing; save or copy it again',
  pictureDamaged: () => 'the picture is damaged and cannot be opened; save or copy it again',
  noSymbolInPicture: () =>
    'no Data Matrix or QR symbol was found in the picture; it must be sharp, whole, evenly lit, with a clear margin: take it again from nearer, or type the serial',
  noPictureReader: () =>
    'the reader of pictures could not be started here: its file did not load, or compiled code is not allowed in this place; scan the symbol or type the serial',
  severalBatteriesInPicture: (p) =>
    `the picture shows labels of several batteries (serials ${p.more?.serials ?? ''}): cut it to one`,
  // planning
  leastCostNeedsCosts: () =>
    'the policy leastCost needs money.unitPrice and money.failureCost (what a failure in the field costs beside the battery)',
  // settings taken from elsewhere
  settingsNotJson: (p) =>
    `the file ${shown(p.given)} is no settings file (JSON), and nothing was changed: choose one that "Save settings as a file" wrote, or a workbook`,
  noSettingsSheet: (p) =>
    `the workbook ${shown(p.given)} has no sheet ${shown(p.more?.sheet)}, and nothing was changed: choose one that has it, or a settings file`,
  recordsAfterAsOf: (p) =>
    `recordsSince is ${shown(p.given)}, later than as-of (${p.more?.asOf ?? ''}); give the day since which every removal is written down, "never" or "unknown"`,
  noAges: (p) =>
    `no battery in service has an age, so nothing can be planned; given ${shown(p.given)} in service: a column with the installation date or the manufacture code is needed`,
  // inventory
  settingUnknown: (p) =>
    `the settings have no key ${shown(p.argument)}; the nearest known one is ${shown(p.more?.nearest)}`,
  settingWrong: (p) => `the setting ${p.argument} is ${shown(p.given)}; allowed is ${p.more?.allowed ?? ''}`,
  settingRow: (p) =>
    `row ${p.more?.row ?? ''} of the settings sheet has the key ${shown(p.given)}; allowed is a key such as years, or one with dots such as money.unitPrice`,
  emptySheet: (p) =>
    `the sheet ${shown(p.given)} is empty; an inventory has a header row and rows of batteries`,
  noHeaderRow: (p) =>
    `no header row was recognised in the first ${p.more?.rows ?? ''} rows of the sheet ${shown(p.given)}; looked for at least two headers such as ${p.more?.looked ?? ''}; say which row it is (in a settings file: headerRow)`,
  headerRowOutside: (p) =>
    `headerRow is ${shown(p.given)}; allowed is a row of the sheet with rows under it, ${range(p)}`,
  headerNotFound: (p) =>
    `the settings (${p.argument}) name the header ${shown(p.given)}, which the sheet does not have; its headers are ${p.more?.headers ?? ''}`,
  noBatteryColumn: (p) =>
    `no column of the sheet ${shown(p.given)} says which battery a row is or how old it is; looked for ${p.more?.looked ?? ''}; say which columns hold them (in a settings file: columns)`,
  nothingScanned: () => 'nothing was scanned; scan or type one serial or label on each line',
  nothingInStock: () => 'the inventory has no battery in stock, so there is no shelf to count',
  noSuchShelf: (p) =>
    `the inventory has no battery in stock at ${shown(p.given)}; it has some at ${p.more?.known || 'places without a name'}`,
  noSerials: (p) => `${p.argument} has no serials, by which batteries are compared`,
  nothingInCommon: (p) =>
    `none of the serials in ${p.argument} (${shown(p.given)} different ones) is in this inventory; choose an earlier file of this inventory`,
  noBatteryRow: (p) =>
    `the sheet ${shown(p.given)} has column heads, but no row of a battery under them; an inventory has one row for each battery`,
} satisfies Record<string, (facts: Facts) => string>;

/** The keys of the catalogue of sentences. */
export type ProblemCode = keyof typeof sentences;

/** The sentence that tells a person what is wrong, what was given and what is allowed. */
export function problemText(problem: Problem): string {
  return sentences[problem.because](problem);
}
