/** The public list of the core, in subject order, and nothing else. */
export * from './basics/outcome.ts';
export * from './basics/problemText.ts';
export * from './basics/units.ts';
export * from './basics/calendar.ts';
export * from './basics/solve.ts';
// label
export * from './label/layout.ts';
export * from './label/codeDay.ts';
export * from './label/readCode.ts';
export * from './label/manufactureDate.ts';
export * from './label/lotNumber.ts';
export * from './label/makerCode.ts';
export * from './label/codificationBureaus.codsp3.ts';
export * from './label/stockNumber.ts';
export * from './label/symbolDate.ts';
export * from './label/labelElements.ts';
export * from './label/elementString.ts';
export * from './label/labelScan.ts';
// service
export * from './service/battery.ts';
export * from './service/monthsInService.ts';
export * from './service/monthsOnShelf.ts';
export * from './service/fiscalPeriod.ts';
// electrochemistry
export * from './electrochemistry/acid.ts';
export * from './electrochemistry/acid.bode1977.ts';
export * from './electrochemistry/acid.harnedHamer1935.ts';
export * from './electrochemistry/acid.perry.ts';
export * from './electrochemistry/restReading.ts';
export * from './electrochemistry/constructions.ts';
export * from './electrochemistry/restVoltage.ts';
export * from './electrochemistry/stateOfCharge.ts';
export * from './electrochemistry/chargeBand.ts';
export * from './electrochemistry/gravityCharge.ts';
export * from './electrochemistry/cellSpread.ts';
export * from './electrochemistry/freezingPoint.ts';
// cranking
export * from './cranking/ratingAmps.ts';
export * from './cranking/specifiedAmps.ts';
export * from './cranking/crankingAmps.ts';
export * from './cranking/loadTestFloor.ts';
export * from './cranking/convertRating.ts';
export * from './cranking/batteryTest.ts';
export * from './cranking/verdict.ts';
export * from './cranking/verdictReason.ts';
export * from './cranking/conditionCode.ts';
// storage
export * from './storage/selfDischarge.ts';
export * from './storage/rechargeBy.ts';
// life
export * from './life/lifeRecord.ts';
export * from './life/lifeSample.ts';
export * from './life/weibull.ts';
export * from './life/lognormal.ts';
export * from './life/standardLife.ts';
export * from './life/lifeEstimate.ts';
export * from './life/lifeLimits.ts';
export * from './life/survival.ts';
export * from './life/failureWithin.ts';
export * from './life/remainingLife.ts';
export * from './life/lifeFromRules.ts';
export * from './life/fixedShapeLife.ts';
export * from './life/parametricLife.ts';
export * from './life/replacementPolicy.ts';
export * from './life/replacementAge.ts';
export * from './life/lifeTable.ts';
export * from './life/lifeTableQuantile.ts';
export * from './life/likelihoodRatio.ts';
export * from './life/lifeRegression.ts';
export * from './life/logRank.ts';
export * from './life/compareGroups.ts';
export * from './life/turnbullTable.ts';
export * from './life/competingRemoval.ts';
export * from './life/lifePrior.ts';
export * from './life/lifePosterior.ts';
export * from './life/posteriorQuantiles.ts';
export * from './life/lifeFit.ts';
export * from './life/failureChance.ts';
export * from './life/standsOut.ts';
// planning
export * from './planning/ageBins.ts';
export * from './planning/poissonBinomial.ts';
export * from './planning/demand.ts';
export * from './planning/renewals.ts';
export * from './planning/forecastCounts.ts';
export * from './planning/sets.ts';
export * from './planning/plannedRenewal.ts';
export * from './planning/ownPast.ts';
export * from './planning/replacementForecast.ts';
export * from './planning/stockLevel.ts';
export * from './planning/orderBy.ts';
export * from './planning/planSettings.ts';
export * from './planning/fiscalYears.ts';
export * from './planning/shareOut.ts';
export * from './planning/yearOrders.ts';
export * from './planning/budget.ts';
export * from './planning/plan.ts';
// inventory
// report
export * from './report/sheet.ts';
export * from './report/forecastSheets.ts';
