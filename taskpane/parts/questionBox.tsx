import { useEffect, useRef } from 'preact/hooks';
import type { Session } from '../session.ts';
import { firstClick } from './firstClick.ts';

/** A question that the work waits for, with a button for each answer. */
export function QuestionBox({ session }: { readonly session: Session }) {
  const question = session.question.value;
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), [question]);
  if (question === undefined) return null;
  return (
    <section class="homeQuestion" aria-labelledby="question">
      <h2 id="question" tabIndex={-1} ref={heading}>
        {question.text}
      </h2>
      {question.answers.map((words, index) => (
        <button
          key={words}
          type="button"
          class={index === 0 ? 'secondary' : undefined}
          onClick={firstClick(() => question.answered(index))}
        >
          {words}
        </button>
      ))}
    </section>
  );
}
