import type { Answers, AnswerTo, Question, RequestOf } from './answers.ts';
import { answers } from './answers.ts';
import type { Memory } from './memory.ts';

/** Answers questions, one after the other; an aborted signal rejects with an AbortError. */
export type Computing = {
  readonly ask: <Q extends Question>(
    question: Q,
    request: RequestOf<Q>,
    signal?: AbortSignal,
  ) => Promise<AnswerTo<Q>>;
  readonly end: () => void;
};

/** One answer from the memory it needs; the worker and the test bench both call it. */
export function answerTo<Q extends Question>(
  memory: Memory,
  question: Q,
  request: RequestOf<Q>,
): ReturnType<Answers[Q]> {
  const give = answers[question] as (memory: Memory, request: RequestOf<Q>) => ReturnType<Answers[Q]>;
  return give(memory, request);
}

/** Computing on the caller's own thread, for tests and machines without workers. */
export function directComputing(): Computing {
  const memory: Memory = {};
  return {
    ask: async <Q extends Question>(question: Q, request: RequestOf<Q>, signal?: AbortSignal) => {
      signal?.throwIfAborted();
      return (await answerTo(memory, question, request)) as AnswerTo<Q>;
    },
    end: () => undefined,
  };
}
