import type { AnswerTo, Question, RequestOf } from './answers.ts';
import type { Computing } from './computing.ts';
import { sendInBlocks, takeBlocks } from './wire.ts';

/** The part of a Worker that is used here. */
export type WorkerLike = {
  readonly postMessage: (message: unknown) => void;
  readonly addEventListener: (
    type: 'message' | 'error',
    listener: (event: MessageEvent & ErrorEvent) => void,
  ) => void;
  readonly terminate: () => void;
};

type Answered = { readonly answer: unknown } | { readonly fault: string };
type Waiting = { readonly resolve: (answer: never) => void; readonly reject: (reason: unknown) => void };

type Planned = { readonly request: RequestOf<'plan'> };

/** What the worker must be told again when it had to be stopped: its memory goes with it. */
type Remembered = { read?: RequestOf<'read'>; again?: RequestOf<'again'>; plan?: Planned };

/** Computing in a worker: the screen stays free, and giving up stops the work at once. */
export function workerComputing(start: () => WorkerLike): Computing {
  const remembered: Remembered = {};
  let worker: WorkerLike | undefined;
  let waiting: Waiting | undefined;
  let last: Promise<unknown> = Promise.resolve();

  const settle = (how: (waiting: Waiting) => void): void => {
    const now = waiting;
    waiting = undefined;
    if (now !== undefined) how(now);
  };
  const stop = (reason: unknown): void => {
    worker?.terminate();
    worker = undefined;
    settle(({ reject }) => reject(reason));
  };
  const started = (): WorkerLike => {
    const made = start();
    // One that was given up while it loaded may still complain; the one that has taken its place goes on.
    made.addEventListener('error', (event) => {
      if (worker === made) stop(new Error(event.message));
    });
    takeBlocks(
      (hear) => made.addEventListener('message', ({ data }) => hear(data)),
      (message) => {
        const said = message as Answered;
        if ('fault' in said) settle(({ reject }) => reject(new Error(said.fault)));
        else settle(({ resolve }) => resolve(said.answer as never));
      },
    );
    return made;
  };
  const put = (question: Question, request: unknown, signal?: AbortSignal): Promise<never> => {
    const giveUp = (): void => stop(signal?.reason);
    signal?.addEventListener('abort', giveUp);
    const answer = new Promise<never>((resolve, reject) => {
      waiting = { resolve, reject };
      void sendInBlocks((piece) => worker?.postMessage(piece), { question, request });
    });
    return answer.finally(() => signal?.removeEventListener('abort', giveUp));
  };
  const recall = async (signal?: AbortSignal): Promise<void> => {
    worker = started();
    if (remembered.read !== undefined) await put('read', remembered.read, signal);
    if (remembered.again !== undefined) await put('again', remembered.again, signal);
    if (remembered.plan !== undefined) await put('plan', remembered.plan.request, signal);
  };
  const askOne = async (question: Question, request: unknown, signal?: AbortSignal): Promise<never> => {
    signal?.throwIfAborted();
    if (worker === undefined && question === 'read') worker = started();
    if (worker === undefined) await recall(signal);
    const answer = await put(question, request, signal);
    remember(remembered, question, request);
    return answer;
  };

  return {
    ask: <Q extends Question>(question: Q, request: RequestOf<Q>, signal?: AbortSignal) => {
      // One question at a time: the memory belongs to the question before.
      const answer = last.then(() => askOne(question, request, signal) as Promise<AnswerTo<Q>>);
      last = answer.catch(() => undefined);
      return answer;
    },
    end: () => stop(new DOMException('the pane was closed', 'AbortError')),
  };
}

function remember(remembered: Remembered, question: Question, request: unknown): void {
  if (question === 'read') {
    Object.assign(remembered, { read: request, again: undefined, plan: undefined });
  } else if (question === 'again') {
    Object.assign(remembered, { again: request, plan: undefined });
  } else if (question === 'plan') remembered.plan = { request: request as RequestOf<'plan'> };
}
