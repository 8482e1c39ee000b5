import { sendInBlocks, takeBlocks } from '../computing/wire.ts';
import type { FileAnswer, FileQuestion } from './fileMessages.ts';
import { answerFor, handedOver, packed } from './fileMessages.ts';

/** Answers one question about files beside the page's thread. */
takeBlocks(
  (listen) => self.addEventListener('message', ({ data }) => listen(data)),
  async (message) => {
    const post = (piece: unknown, transfer: Transferable[]): void => self.postMessage(piece, { transfer });
    try {
      const answer: FileAnswer = packed(await answerFor(message as FileQuestion));
      await sendInBlocks(post, { answer }, handedOver(answer));
    } catch (error) {
      const fault = error instanceof Error ? (error.stack ?? error.message) : String(error);
      await sendInBlocks(post, { fault });
    }
  },
);
