import type { GivenFile } from './openFile.ts';
import { givenFile } from './openFile.ts';

const hasFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') ?? false;

/** Takes files that are dropped anywhere on the page, before the grid or the browser does something with them. */
export function takeDroppedFiles(take: (files: readonly GivenFile[]) => void): void {
  const mark = (over: boolean): void => {
    document.body.classList.toggle('dropping', over);
  };
  const own = (event: DragEvent, over: boolean): boolean => {
    if (!hasFiles(event)) return false;
    // A part of the pane that takes files itself, such as pictures of labels, gets them.
    if ((event.target as Element).closest?.('[data-takes-files]')) {
      mark(false);
      return false;
    }
    event.preventDefault();
    event.stopPropagation();
    mark(over);
    return true;
  };
  window.addEventListener('dragover', (event) => own(event, true), true);
  window.addEventListener('dragleave', (event) => event.relatedTarget === null && mark(false), true);
  window.addEventListener(
    'drop',
    (event) => {
      if (own(event, false)) take([...event.dataTransfer!.files].map(givenFile));
    },
    true,
  );
}
