import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { SaveAs } from '../host/workbook/builtInHost.ts';
import type { PageQuestion, PageState } from './pageState.ts';
import { DISCARD, SAVE } from './pageText.ts';
import { giveSaved, saveWorkbook } from './saveFile.ts';

/** The question that the page is asking, in a dialog of its own. */
export function PageDialog({ page }: { readonly page: PageState }) {
  const question = page.question.value;
  if (question === undefined) return null;
  const close = (): void => {
    if (page.question.value === question) page.question.value = undefined;
  };
  return (
    <Dialog key={question.kind} title={titleOf(question)} onClose={close}>
      {question.kind === 'save' && <SaveQuestion page={page} close={close} />}
      {question.kind === 'losses' && <LossQuestion page={page} question={question} close={close} />}
      {question.kind === 'discard' && <DiscardQuestion question={question} close={close} />}
    </Dialog>
  );
}

const titleOf = ({ kind }: PageQuestion): string =>
  ({ save: SAVE.title, losses: SAVE.lossTitle, discard: DISCARD.title })[kind];

type DialogProps = {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ComponentChildren;
};

function Dialog({ title, onClose, children }: DialogProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const shown = dialog.current!;
    shown.showModal();
    return () => shown.close();
  }, []);
  return (
    <dialog ref={dialog} class="pageDialog" aria-labelledby="dialogTitle" onClose={onClose}>
      <article>
        <h2 id="dialogTitle">{title}</h2>
        {children}
      </article>
    </dialog>
  );
}

function SaveQuestion({ page, close }: { readonly page: PageState; readonly close: () => void }) {
  const [as, setAs] = useState<SaveAs>('formulas');
  return (
    <>
      <fieldset>
        <legend>{SAVE.question}</legend>
        {(['formulas', 'values'] as const).map((each) => (
          <div key={each} class="choice">
            <label>
              <input
                type="radio"
                name="savedAs"
                checked={as === each}
                aria-describedby={`savedAs-${each}`}
                onChange={() => setAs(each)}
              />
              {SAVE.choices[each].label}
            </label>
            <small id={`savedAs-${each}`}>{SAVE.choices[each].hint}</small>
          </div>
        ))}
      </fieldset>
      <Answers go={SAVE.go} onGo={() => void saveWorkbook(page, as)} cancel={SAVE.cancel} onCancel={close} />
    </>
  );
}

type LossProps = {
  readonly page: PageState;
  readonly question: Extract<PageQuestion, { kind: 'losses' }>;
  readonly close: () => void;
};

function LossQuestion({ page, question: { saved, as }, close }: LossProps) {
  return (
    <>
      <p>{SAVE.lossLead}</p>
      <ul>
        {saved.lost.map((each) => (
          <li key={each}>{each}</li>
        ))}
      </ul>
      <p>{SAVE.lossAdvice}</p>
      <Answers
        go={SAVE.goAnyway}
        onGo={() => giveSaved(page, saved, as)}
        cancel={SAVE.cancel}
        onCancel={close}
      />
    </>
  );
}

type DiscardProps = {
  readonly question: Extract<PageQuestion, { kind: 'discard' }>;
  readonly close: () => void;
};

function DiscardQuestion({ question: { goOn }, close }: DiscardProps) {
  const go = (): void => {
    close();
    goOn();
  };
  return (
    <>
      <p>{DISCARD.text}</p>
      <Answers go={DISCARD.go} onGo={go} cancel={DISCARD.cancel} onCancel={close} />
    </>
  );
}

type AnswersProps = {
  readonly go: string;
  readonly onGo: () => void;
  readonly cancel: string;
  readonly onCancel: () => void;
};

function Answers({ go, onGo, cancel, onCancel }: AnswersProps) {
  return (
    <footer class="answers">
      <button type="button" class="secondary outline" onClick={onCancel}>
        {cancel}
      </button>
      <button type="button" onClick={onGo}>
        {go}
      </button>
    </footer>
  );
}
