import type { Question, RequestOf } from './answers.ts';
import { answerTo } from './computing.ts';
import type { Memory } from './memory.ts';
import { sendInBlocks, takeBlocks } from './wire.ts';

const memory: Memory = {};

const post = (message: unknown): void => self.postMessage(message);

takeBlocks(
  (listen) => self.addEventListener('message', ({ data }) => listen(data)),
  async (message) => {
    const { question, request } = message as { question: Question; request: RequestOf<Question> };
    try {
      await sendInBlocks(post, { answer: await answerTo(memory, question, request) });
    } catch (error) {
      await sendInBlocks(post, {
        fault: error instanceof Error ? (error.stack ?? error.message) : String(error),
      });
    }
  },
);
