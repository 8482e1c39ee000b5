import { answer } from '../../src/basics/outcome.ts';
import { sendInBlocks, takeBlocks } from '../computing/wire.ts';
import type { WorkerLike } from '../computing/workerComputing.ts';
import type { FileWork } from '../host/workbook/fileWork.ts';
import type { FileAnswer, FileQuestion } from './fileMessages.ts';
import { unpacked } from './fileMessages.ts';

/** File work in a worker: one for each piece of work, so that giving up and being done both free all that it held. */
export function workerFileWork(start: () => WorkerLike): FileWork {
  return {
    read: async (bytes, fileName, id, signal) => {
      const said = await asked(start, { kind: 'read', request: [bytes, fileName, id] }, signal);
      if (!('read' in said)) throw new Error('the worker answered another question');
      return said.read.ok ? answer(unpacked(said.read.value)) : said.read;
    },
    save: async (original, now, as, signal) => {
      const said = await asked(start, { kind: 'save', request: [original, now, as] }, signal);
      if (!('saved' in said)) throw new Error('the worker answered another question');
      return said.saved;
    },
  };
}

type Message = { readonly answer: FileAnswer } | { readonly fault: string };

function asked(start: () => WorkerLike, question: FileQuestion, signal?: AbortSignal): Promise<FileAnswer> {
  signal?.throwIfAborted();
  const worker = start();
  let giveUp: (() => void) | undefined;
  const said = new Promise<FileAnswer>((resolve, reject) => {
    giveUp = () => reject(signal?.reason);
    signal?.addEventListener('abort', giveUp);
    worker.addEventListener('error', (event) => reject(new Error(event.message)));
    takeBlocks(
      (hear) => worker.addEventListener('message', ({ data }) => hear(data)),
      (message) => {
        const answered = message as Message;
        if ('fault' in answered) reject(new Error(answered.fault));
        else resolve(answered.answer);
      },
    );
    sendInBlocks((piece) => worker.postMessage(piece), question).catch(reject);
  });
  return said.finally(() => {
    if (giveUp !== undefined) signal?.removeEventListener('abort', giveUp);
    worker.terminate();
  });
}
