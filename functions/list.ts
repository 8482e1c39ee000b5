import type { Cell } from './cell.ts';
import * as cranking from './cranking.ts';
import * as electrochemistry from './electrochemistry.ts';
import * as life from './life.ts';
import * as label from './label.ts';
import * as planning from './planning.ts';
import * as service from './service.ts';
import * as storage from './storage.ts';

/** A cell function as every host gets it: its id in the namespace and what answers it. */
export type CellFunction = { readonly id: string; readonly run: (...given: any[]) => Cell[][] };

export { NAMESPACE } from './namespace.ts';

/** Every cell function, in the order of docs/functions.md. Excel and the built-in workbook both take this list. */
export const functions: readonly CellFunction[] = [
  // label
  { id: 'MANUFACTUREDATE', run: label.manufactureDate },
  { id: 'LOTNUMBER', run: label.lotNumber },
  { id: 'STOCKNUMBER', run: label.stockNumber },
  { id: 'MAKERCODE', run: label.makerCode },
  { id: 'LABELSCAN', run: label.labelScan },
  // service
  { id: 'MONTHSINSERVICE', run: service.monthsInService },
  { id: 'MONTHSONSHELF', run: service.monthsOnShelf },
  { id: 'FISCALPERIOD', run: service.fiscalPeriod },
  // electrochemistry
  { id: 'STATEOFCHARGE', run: electrochemistry.stateOfCharge },
  { id: 'CHARGEBAND', run: electrochemistry.chargeBand },
  { id: 'GRAVITYCHARGE', run: electrochemistry.gravityCharge },
  { id: 'CELLSPREAD', run: electrochemistry.cellSpread },
  { id: 'RESTVOLTAGE', run: electrochemistry.restVoltage },
  { id: 'FREEZINGPOINT', run: electrochemistry.freezingPoint },
  // cranking
  { id: 'CRANKINGAMPS', run: cranking.crankingAmps },
  { id: 'LOADTESTFLOOR', run: cranking.loadTestFloor },
  { id: 'SPECIFIEDAMPS', run: cranking.specifiedAmps },
  { id: 'VERDICT', run: cranking.verdict },
  { id: 'VERDICTREASON', run: cranking.verdictReason },
  { id: 'CONVERTRATING', run: cranking.convertRating },
  // storage
  { id: 'SELFDISCHARGE', run: storage.selfDischarge },
  { id: 'RECHARGEBY', run: storage.rechargeBy },
  // life
  { id: 'LIFEFIT', run: life.lifeFit },
  { id: 'LIFETABLE', run: life.lifeTable },
  { id: 'LIFEFROMRULES', run: life.lifeFromRules },
  { id: 'SURVIVAL', run: life.survival },
  { id: 'FAILUREWITHIN', run: life.failureWithin },
  { id: 'REMAININGLIFE', run: life.remainingLife },
  { id: 'REPLACEMENTAGE', run: life.replacementAge },
  // planning
  { id: 'REPLACEMENTFORECAST', run: planning.replacementForecast },
  { id: 'STOCKLEVEL', run: planning.stockLevel },
  { id: 'ORDERBY', run: planning.orderBy },
];
