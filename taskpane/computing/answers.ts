import { benchAnswer, serialOfRowAnswer } from './benchAnswer.ts';
import { checksAnswer } from './checksAnswer.ts';
import { fillAnswer } from './fillAnswer.ts';
import { fillSheetAnswer } from './fillSheetAnswer.ts';
import { forecastAnswer } from './forecastAnswer.ts';
import { claimsAnswer, lifeAnswer } from './lifeAnswer.ts';
import { planAnswer } from './planAnswer.ts';
import { compareAnswer, countAnswer, storeListAnswer } from './storeAnswers.ts';
import { symbolAnswer } from './symbolAnswer.ts';
import { againAnswer, readAnswer } from './readAnswer.ts';

/** Every question that the pane asks of the computing side, and what answers it. */
export const answers = {
  read: readAnswer,
  again: againAnswer,
  plan: planAnswer,
  forecast: forecastAnswer,
  fill: fillAnswer,
  fillSheet: fillSheetAnswer,
  checks: checksAnswer,
  life: lifeAnswer,
  bench: benchAnswer,
  storeList: storeListAnswer,
  count: countAnswer,
  compare: compareAnswer,
  claims: claimsAnswer,
  serialOfRow: serialOfRowAnswer,
  symbol: symbolAnswer,
} as const;

export type Answers = typeof answers;
export type Question = keyof Answers;
export type RequestOf<Q extends Question> = Parameters<Answers[Q]>[1];
export type AnswerTo<Q extends Question> = Awaited<ReturnType<Answers[Q]>>;
