import type { FitModel, FixedShapeLife, LifeModel } from '../../../src/index.ts';
import {
  compareGroups,
  estimateOfSample,
  fixedShapeLife,
  lifeRegression,
  lifeSample,
  logRank,
} from '../../../src/index.ts';
import { valueOf } from '../../published/check.ts';
import { fitFigure } from './fitFigures.ts';
import fixedShape from './fixedShape.json' with { type: 'json' };
import groups from './groups.json' with { type: 'json' };
import maximumLikelihood from './maximumLikelihood.json' with { type: 'json' };
import { readLives, readReference } from './readLives.ts';
import type { Figure, ReferenceRow } from './referenceRow.ts';
import { figureRows, once } from './referenceRow.ts';
import regressions from './regressions.json' with { type: 'json' };

type Figures = Readonly<Record<string, Figure>>;
const figures = (expected: object): Figures => expected as Figures;

/** Weibull, lognormal and exponential fits with standard errors and both kinds of limits. */
export const maximumLikelihoodRows: readonly ReferenceRow[] = maximumLikelihood.flatMap((each) => {
  const fit = once(() => {
    const sample = valueOf(lifeSample(readLives(each.lives)));
    return { sample, estimate: valueOf(estimateOfSample(sample, each.model as LifeModel)) };
  });
  return figureRows(each, figures(each.expected), (name) => fitFigure(fit().sample, fit().estimate, name));
});

/** Scales for a known shape. */
export const fixedShapeRows: readonly ReferenceRow[] = fixedShape.flatMap((each) => {
  const life = once(() => valueOf(fixedShapeLife(readLives(each.lives), each.ask.shape, each.ask.level)));
  return figureRows(each, figures(each.expected), (name) => life()[name as keyof FixedShapeLife]);
});

/** Groups compared by likelihood and by log-rank. */
export const groupRows: readonly ReferenceRow[] = groups.flatMap((each) => {
  const figureOf = once(() => groupFigures(each.lives));
  return figureRows(each, figures(each.expected), (name) => figureOf()[name]);
});

function groupFigures(lives: string): Readonly<Record<string, number | undefined>> {
  const names = [...new Set(readReference(lives).map(({ more }) => more.group!))].sort();
  const grouped = names.map((name) => ({ name, lives: readLives(lives, name) }));
  const {
    separate,
    commonShape,
    pooled,
    equalLives,
    equalShape,
    logRank: ranks,
    ...each
  } = valueOf(compareGroups(grouped));
  const peto = logRank(
    grouped.map((group) => group.lives),
    'surviving',
  );
  return {
    ...{ 'log-likelihood apart': separate, 'log-likelihood with one shape': commonShape },
    ...{ 'log-likelihood together': pooled, 'log-rank chi-square': ranks?.chiSquare },
    ...{ 'equal lives chi-square': equalLives.chiSquare, 'equal lives chance': equalLives.chance },
    ...{ 'equal shape chi-square': equalShape.chiSquare, 'equal shape chance': equalShape.chance },
    ...{ 'log-rank degrees of freedom': ranks?.degreesOfFreedom, 'log-rank chance': ranks?.chance },
    'Peto-Peto chi-square': peto.ok ? peto.value.chiSquare : undefined,
    ...Object.fromEntries(
      names.flatMap((name, index) => [
        [`observed ${name}`, ranks?.observed[index]],
        [`expected ${name}`, ranks?.expected[index]],
      ]),
    ),
    ...Object.fromEntries(
      each.groups.flatMap(({ name, estimate }) => [
        [`shape ${name}`, 1 / estimate.sigma],
        [`scale ${name}`, Math.exp(estimate.mu)],
      ]),
    ),
  };
}

/** Accelerated-life regressions. */
export const regressionRows: readonly ReferenceRow[] = regressions.flatMap((each) => {
  const figureOf = once(() => regressionFigures(each.lives, each.ask));
  return figureRows(each, figures(each.expected), (name) => figureOf()[name]);
});

type Ask = { readonly model: string; readonly covariates: readonly string[]; readonly baseline: string };

function regressionFigures(lives: string, { model, covariates, baseline }: Ask): Record<string, number> {
  const rows = readReference(lives);
  const groupNames = baseline === '' ? [] : [...new Set(rows.map(({ more }) => more.group!))].sort();
  const others = groupNames.filter((name) => name !== baseline);
  const fit = valueOf(
    lifeRegression(
      rows.map(({ record, more }) => ({
        record,
        covariates: [
          ...others.map((name) => Number(more.group === name)),
          ...covariates.map((name) => Number(more[name])),
        ],
      })),
      model as FitModel,
    ),
  );
  return {
    ...{ 'log-likelihood': fit.logLikelihood, 'log-likelihood without covariates': fit.logLikelihoodNone },
    ...{ 'chi-square': fit.againstNone.chiSquare, 'degrees of freedom': fit.againstNone.degreesOfFreedom },
    ...{ chance: fit.againstNone.chance, sigma: fit.sigma, 'se log sigma': fit.errorLogSigma },
    ...{ 'coefficient intercept': fit.intercept, 'se intercept': fit.interceptError },
    ...Object.fromEntries(
      [...others, ...covariates].flatMap((name, index) => [
        [`coefficient ${name}`, fit.coefficients[index]!],
        [`se ${name}`, fit.standardErrors[index]!],
      ]),
    ),
  };
}
