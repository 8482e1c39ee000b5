import { useRef } from 'preact/hooks';
import { givenFile, openDemo, openFile } from './openFile.ts';
import type { PageState } from './pageState.ts';
import { PAGE } from './pageText.ts';

type HeaderProps = { readonly page: PageState };

/** What is open, and the ways to open and save. */
export function PageHeader({ page }: HeaderProps) {
  const starting = page.workbook.value === undefined;
  return (
    <>
      <div class="fileName">
        <h1>Crankbook</h1>
        <p>
          <span class="name">{page.fileName.value ?? PAGE.noFile}</span>
          {page.changed.value && <span class="notSaved"> ({PAGE.notSaved})</span>}
        </p>
      </div>
      <div class="fileButtons">
        <OpenButton page={page} />
        <button
          type="button"
          class="secondary"
          disabled={starting}
          onClick={() => (page.question.value = { kind: 'save' })}
        >
          {PAGE.save}
        </button>
        <button type="button" class="secondary" disabled={starting} onClick={() => openDemo(page)}>
          {PAGE.demo}
        </button>
      </div>
    </>
  );
}

function OpenButton({ page }: HeaderProps) {
  const chooser = useRef<HTMLInputElement>(null);
  const take = (input: HTMLInputElement): void => {
    const file = input.files?.[0];
    if (file !== undefined) openFile(page, givenFile(file));
    // The same file can be chosen again after it was changed elsewhere.
    input.value = '';
  };
  return (
    <>
      <button
        type="button"
        title={PAGE.openHint}
        disabled={page.workbook.value === undefined}
        onClick={() => chooser.current?.click()}
      >
        {PAGE.open}
      </button>
      <input
        ref={chooser}
        type="file"
        hidden
        accept=".xlsx,.xlsm,.csv"
        onChange={(event) => take(event.currentTarget)}
      />
    </>
  );
}
