import type { Session } from '../session.ts';

/**
 * Asks the user something in the pane; a question that still stands is answered with its safe answer.
 * @param answers  what they can say, the safe answer first
 * @returns which, counted from 0
 */
export async function ask({ question }: Session, text: string, answers: readonly string[]): Promise<number> {
  question.value?.answered(0);
  let answered: (index: number) => void = () => undefined;
  const answer = await new Promise<number>((resolve) => {
    answered = resolve;
    question.value = { text, answers, answered };
  });
  // A question that took the place of this one must stay.
  if (question.value?.answered === answered) question.value = undefined;
  return answer;
}
