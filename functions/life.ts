import type { Outcome } from '../src/basics/outcome.ts';
import { andThen, answer } from '../src/basics/outcome.ts';
import { failureWithin as coreFailureWithin } from '../src/life/failureWithin.ts';
import type { LifeFit } from '../src/life/lifeFit.ts';
import { fitModel, lifeFitOfSample } from '../src/life/lifeFit.ts';
import { lifeFromRules as coreLifeFromRules } from '../src/life/lifeFromRules.ts';
import { lifeSampleFromColumns } from '../src/life/lifeSample.ts';
import type { LifeTable } from '../src/life/lifeTable.ts';
import { lifeTableOfSample } from '../src/life/lifeTable.ts';
import { remainingLife as coreRemainingLife } from '../src/life/remainingLife.ts';
import { replacementAge as coreReplacementAge } from '../src/life/replacementAge.ts';
import { survival as coreSurvival } from '../src/life/survival.ts';
import type { Cell } from './cell.ts';
import { eachCell, eachRow, isBlankOrZero, isCellError, numberFrom, table } from './cell.ts';
import { isEmpty, lifeColumns } from './lifeColumns.ts';

const NOT_REACHED = 'not reached';

/**
 * Life of a fleet from its removal history: shape, scale (lognormal: mu, sigma), median life and tenth-percentile life in months, with low and high.
 * @customfunction LIFEFIT
 * @param {any[][]} months Age of each battery at its removal or today, months, above 0; blank or 0 leaves the row out; column
 * @param {any[][]} failed 1 = removed because it failed, 0 or blank = still in service or removed for another reason; column
 * @param {any[][]} [ageAtRecordStart] Age when it came under record, months, 0 or more, under its months, default 0 (seen from new); column
 * @param {any} [model] "weibull" (default) or "lognormal"
 * @param {any} [level] Chance that low and high hold, above 0 and below 1, default 0.9
 * @returns {any[][]} Table: name, estimate, low, high
 * @uncertainty Low and high: the likelihood's own limits under 20 failures, from 20 on normal on the log scale; "not reached" where the records set no limit. From 1 to 4 failures, or where the records give no shape, the usual belief (half gone by 54 months, 8 to 380) and the records together; the row basis says so.
 * @notfor Failures only, without the batteries still in service; batteries of several kinds or sites in one range; a history that begins later than the installations without ageAtRecordStart.
 * @example =CRANK.LIFEFIT({20;30;40;50;60;36;48}, {1;1;1;1;1;0;0})
 */
export function lifeFit(
  months: any[][],
  failed: any[][],
  ageAtRecordStart?: any[][],
  model?: any,
  level?: any,
): any[][] {
  if (isEmpty(months)) return [['']];
  return table([months, failed, ageAtRecordStart, model, level], () =>
    andThen(lifeColumns({ months, failed, ageAtRecordStart }), (columns) =>
      andThen(fitModel(model), (form) =>
        andThen(levelFrom(level), (chance) =>
          andThen(lifeFitOfSample(lifeSampleFromColumns(columns), form, chance), (fit) =>
            answer(fitRows(fit)),
          ),
        ),
      ),
    ),
  );
}

/**
 * Share of batteries still good after each age at which some failed, with the number at risk and limits, straight from a removal history.
 * @customfunction LIFETABLE
 * @param {any[][]} months Age of each battery at its removal or today, months, above 0; blank or 0 leaves the row out; column
 * @param {any[][]} failed 1 = removed because it failed, 0 or blank = still in service or removed for another reason; column
 * @param {any[][]} [ageAtRecordStart] Age when it came under record, months, 0 or more, under its months, default 0 (seen from new); column
 * @param {any} [level] Chance that low and high hold at one age, above 0 and below 1, default 0.9
 * @returns {any[][]} Table: month, at risk, failed, surviving, low, high
 * @uncertainty Greenwood errors, log-log limits for one age at a time. Few at risk make a wide band; blank where a share is not defined, also after the table has fallen to 0 while younger records go on.
 * @notfor Forecasting beyond the oldest failure; failures known only to lie between two inspections.
 * @example =CRANK.LIFETABLE({20;30;40;50;60;36;48}, {1;1;1;1;1;0;0})
 */
export function lifeTable(
  months: any[][],
  failed: any[][],
  ageAtRecordStart?: any[][],
  level?: any,
): any[][] {
  if (isEmpty(months)) return [['']];
  return table([months, failed, ageAtRecordStart, level], () =>
    andThen(lifeColumns({ months, failed, ageAtRecordStart }), (columns) =>
      andThen(levelFrom(level), (chance) =>
        andThen(lifeTableOfSample(lifeSampleFromColumns(columns), { level: chance }), (lives) =>
          answer(lifeTableRows(lives)),
        ),
      ),
    ),
  );
}

/**
 * Weibull shape and scale in months of the life through two rules of thumb, such as 10 % gone by 36 months and half by 54.
 * @customfunction LIFEFROMRULES
 * @param {any[][]} share1 Share that has failed by month1, above 0 and below 1; cell or column
 * @param {any[][]} month1 Age of the first rule, months, above 0; cell or column
 * @param {any[][]} share2 Share that has failed by month2, above 0 and below 1; cell or column
 * @param {any[][]} month2 Age of the second rule, months, above 0; the larger age with the larger share; cell or column
 * @returns {any[][]} Table: shape, scale; one line for each line of the columns
 * @uncertainty As good as the rules: nothing is known of their spread. Two rules close together make the shape very unsure.
 * @notfor A fleet with a removal history of its own: use LIFEFIT.
 * @example =CRANK.LIFEFROMRULES(0.1, 36, 0.5, 54)
 */
export function lifeFromRules(share1: any[][], month1: any[][], share2: any[][], month2: any[][]): any[][] {
  if (isEmpty(share1)) return [['']];
  const inputs = { columns: [share1, month1, share2, month2], blank: isBlankOrZero };
  const rows = eachRow(inputs, 2, (cells) =>
    andThen(numbersFrom(cells, ['share1', 'month1', 'share2', 'month2']), ([first, age1, second, age2]) =>
      andThen(coreLifeFromRules(first!, age1!, second!, age2!), ({ shape, scale }) => answer([shape, scale])),
    ),
  );
  const [first] = rows;
  const isOneError = rows.length === 1 && isCellError(first![0]);
  return isOneError ? [[first![0]!]] : [['shape', 'scale'], ...rows];
}

/**
 * Share of batteries still good at an age, 0 to 1, from Weibull shape and scale.
 * @customfunction SURVIVAL
 * @param {any[][]} month Age in service, months, 0 or more; cell or column
 * @param {any[][]} shape Weibull shape (1 no wear-out, 3 strong), above 0, as LIFEFIT or LIFEFROMRULES answers; cell or column
 * @param {any[][]} scale Weibull scale, the age by which 63.2 % have failed, months, above 0; cell or column
 * @returns {any[][]} Share still good, 0 to 1
 * @uncertainty That of shape and scale, which is not shown here: put their low and high in.
 * @notfor mu and sigma of a lognormal life; ages beyond the oldest failure on record, other than as a guess.
 * @example =CRANK.SURVIVAL(36, 3, 60)
 */
export function survival(month: any[][], shape: any[][], scale: any[][]): any[][] {
  return eachCell({ columns: [month, shape, scale] }, (cells) =>
    andThen(numbersFrom(cells, ['month', 'shape', 'scale']), ([age, form, size]) =>
      coreSurvival(age!, form!, size!),
    ),
  );
}

/**
 * Probability, 0 to 1, that a battery of an age, still good, fails within the next months, from Weibull shape and scale.
 * @customfunction FAILUREWITHIN
 * @param {any[][]} age Age in service, months, 0 or more; cell or column
 * @param {any[][]} months Months from now, 0 or more; cell or column
 * @param {any[][]} shape Weibull shape (1 no wear-out, 3 strong), above 0, as LIFEFIT or LIFEFROMRULES answers; cell or column
 * @param {any[][]} scale Weibull scale, the age by which 63.2 % have failed, months, above 0; cell or column
 * @returns {any[][]} Probability, 0 to 1
 * @uncertainty That of shape and scale, which is not shown here. Add up the column for an expected count; REPLACEMENTFORECAST gives it limits.
 * @notfor mu and sigma of a lognormal life; condemning a battery by its age alone.
 * @example =CRANK.FAILUREWITHIN(36, 12, 3, 60)
 */
export function failureWithin(age: any[][], months: any[][], shape: any[][], scale: any[][]): any[][] {
  return eachCell({ columns: [age, months, shape, scale] }, (cells) =>
    andThen(numbersFrom(cells, ['age', 'months', 'shape', 'scale']), ([now, ahead, form, size]) =>
      coreFailureWithin(now!, ahead!, form!, size!),
    ),
  );
}

/**
 * Months until the given share of batteries of an age, still good, has failed, from Weibull shape and scale.
 * @customfunction REMAININGLIFE
 * @param {any[][]} age Age in service, months, 0 or more; cell or column
 * @param {any[][]} shape Weibull shape (1 no wear-out, 3 strong), above 0, as LIFEFIT or LIFEFROMRULES answers; cell or column
 * @param {any[][]} scale Weibull scale, the age by which 63.2 % have failed, months, above 0; cell or column
 * @param {any} [share] Share that has failed by then, above 0 and below 1, default 0.5
 * @returns {any[][]} Months from now
 * @uncertainty One battery may last from next to nothing to twice this; shares of 0.1 and 0.9 show the span.
 * @notfor mu and sigma of a lognormal life; a date on which to change one battery.
 * @example =CRANK.REMAININGLIFE(36, 3, 60)
 */
export function remainingLife(age: any[][], shape: any[][], scale: any[][], share?: any): any[][] {
  return eachCell({ columns: [age, shape, scale], singles: [share] }, (cells) =>
    andThen(numbersFrom(cells, ['age', 'shape', 'scale']), ([now, form, size]) =>
      andThen(isBlankOrZero(share) ? answer(0.5) : numberFrom(share, 'share'), (gone) =>
        coreRemainingLife(now!, form!, size!, gone),
      ),
    ),
  );
}

/**
 * Planned-replacement age of least long-run cost, months, from Weibull shape and scale and what both kinds of replacement cost.
 * @customfunction REPLACEMENTAGE
 * @param {any[][]} shape Weibull shape (1 no wear-out, 3 strong), above 0, as LIFEFIT or LIFEFROMRULES answers; cell or column
 * @param {any[][]} scale Weibull scale, the age by which 63.2 % have failed, months, above 0; cell or column
 * @param {any[][]} plannedCost Cost of one planned replacement, above 0; cell or column
 * @param {any[][]} failureCost Cost of one failure in service with all that follows, above 0, same money; cell or column
 * @returns {any[][]} Age, months
 * @uncertainty The low point is flat: ages a fifth to a quarter to either side often cost within 2 % of it. Low and high of the shape move it far more.
 * @notfor mu and sigma of a lognormal life; a shape whose low and high include 1; batteries that a test finds in time.
 * @example =CRANK.REPLACEMENTAGE(2.4, 60, 350, 900)
 */
export function replacementAge(
  shape: any[][],
  scale: any[][],
  plannedCost: any[][],
  failureCost: any[][],
): any[][] {
  const inputs = { columns: [shape, scale, plannedCost, failureCost], blank: isBlankOrZero };
  return eachCell(inputs, (cells) =>
    andThen(
      numbersFrom(cells, ['shape', 'scale', 'plannedCost', 'failureCost']),
      ([form, size, planned, failure]) => coreReplacementAge(form!, size!, planned!, failure!),
    ),
  );
}

function levelFrom(given: unknown): Outcome<number> {
  return isBlankOrZero(given) ? answer(0.9) : numberFrom(given, 'level');
}

function numbersFrom(cells: readonly unknown[], names: readonly string[]): Outcome<readonly number[]> {
  const numbers: number[] = [];
  for (const [index, name] of names.entries()) {
    const number = numberFrom(cells[index], name);
    if (!number.ok) return number;
    numbers.push(number.value);
  }
  return answer(numbers);
}

function fitRows(fit: LifeFit): Cell[][] {
  const figures = fit.figures.map(({ name, estimate, low, high }) => [
    name,
    estimate,
    low ?? NOT_REACHED,
    high ?? NOT_REACHED,
  ]);
  return [
    ['name', 'estimate', 'low', 'high'],
    ...figures,
    ['failures', fit.failures, '', ''],
    ['lives', fit.lives, '', ''],
    ['log-likelihood', fit.logLikelihood ?? '', '', ''],
    ['basis', fit.basis, '', ''],
  ];
}

// Where the share fell to 0 with lives still to come under record, 0 would be a figure that the records don't give.
function lifeTableRows({ rows, fellToZeroAt }: LifeTable): Cell[][] {
  const isDefined = (month: number): boolean => fellToZeroAt === undefined || month < fellToZeroAt;
  return [
    ['month', 'at risk', 'failed', 'surviving', 'low', 'high'],
    ...rows.map(({ month, atRisk, failed, surviving, low, high }) => [
      month,
      atRisk,
      failed,
      isDefined(month) ? surviving : '',
      low ?? '',
      high ?? '',
    ]),
  ];
}
