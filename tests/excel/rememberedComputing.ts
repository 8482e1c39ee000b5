import { createHash } from 'node:crypto';
import { serialize } from 'node:v8';
import type { SheetRows } from '../../src/inventory/inventory.ts';
import type { AnswerTo, Question, RequestOf } from '../../taskpane/computing/answers.ts';
import type { Computing } from '../../taskpane/computing/computing.ts';
import { answerTo } from '../../taskpane/computing/computing.ts';
import type { Memory } from '../../taskpane/computing/memory.ts';

type Answered = { readonly answer: unknown; readonly after: Memory };

// For all sessions of a test file: what was answered to which request in front of which memory.
const known = new Map<string, Answered>();

/**
 * Computing that gives the answers of the pane's own, and computes each of them once: the same request in front of
 * the same memory has the same answer. For tests that repeat an action for every fault of the host.
 */
export function rememberedComputing(): Computing {
  const memory: Memory = {};
  return {
    ask: async <Q extends Question>(question: Q, request: RequestOf<Q>, signal?: AbortSignal) => {
      signal?.throwIfAborted();
      const key = digest([question, request, plain(memory)]);
      const found = known.get(key) ?? (await computed(memory, question, request));
      known.set(key, found);
      for (const each of Object.keys(memory)) delete memory[each as keyof Memory];
      Object.assign(memory, found.after);
      // A copy each time, as a worker sends it.
      return structuredClone(found.answer) as AnswerTo<Q>;
    },
    end: () => undefined,
  };
}

const digest = (value: unknown): string => createHash('sha256').update(serialize(value)).digest('hex');

/** The memory as plain data: sheets with what they say of each cell. */
function plain({ sheet, tests, charges, ...rest }: Memory): object {
  return { ...rest, sheets: [sheet, tests, charges].map((each) => each && plainSheet(each)) };
}

function plainSheet({ isDateCell, ...sheet }: SheetRows): object {
  const dates = sheet.rows.map((row, index) => row.map((_, column) => isDateCell?.(index, column) ?? false));
  return { ...sheet, dates };
}

async function computed<Q extends Question>(
  memory: Memory,
  question: Q,
  request: RequestOf<Q>,
): Promise<Answered> {
  const answer: unknown = await answerTo(memory, question, request);
  return { answer, after: { ...memory } };
}
