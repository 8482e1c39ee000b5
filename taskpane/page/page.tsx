import '@picocss/pico/css/pico.conditional.min.css';
import './page.css';
import { effect } from '@preact/signals';
import { render } from 'preact';
import { readHere } from '../actions/readInventory.ts';
import { mountPane } from '../pane.tsx';
import type { Session } from '../session.ts';
import { newSession } from '../session.ts';
import { surroundingsOf } from '../surroundings.ts';
import { CellLine } from './cellLine.tsx';
import { PageDialog } from './dialogs.tsx';
import { takeDroppedFiles } from './dropFiles.ts';
import { openFile } from './openFile.ts';
import { PageHeader } from './pageHeader.tsx';
import { PageMessage } from './pageMessage.tsx';
import type { PageState } from './pageState.ts';
import { newPageState } from './pageState.ts';
import { faultText, PAGE } from './pageText.ts';
import { tellProblem } from './pageWork.ts';
import type { PageWorkbook } from './pageWorkbook.ts';
import { focusFirst, moveBetweenRegions } from './regions.ts';
import { Splitter } from './splitter.tsx';

const part = (id: string): HTMLElement => document.getElementById(id)!;

/** Draws the page at once; the workbook, which is far larger, comes after it. */
async function start(): Promise<void> {
  const page = newPageState();
  draw(page);
  takeDroppedFiles(([file, ...more]) => {
    if (more.length > 0) tellProblem(page, PAGE.dropOne);
    else if (file !== undefined) openFile(page, file);
  });
  guardChanges(page);
  try {
    const workbook = await startWorkbook(page);
    const session = newSession(surroundingsOf(workbook.host));
    join(page, session);
    mountPane(part('pane'), session);
  } catch (error) {
    tellProblem(page, faultText(error));
  }
}

function draw(page: PageState): void {
  render(<PageHeader page={page} />, part('head'));
  render(<PageMessage page={page} />, part('message'));
  render(<CellLine page={page} />, part('cell'));
  render(<Splitter />, part('split'));
  render(<PageDialog page={page} />, part('dialogs'));
}

/** Loads the grid and joins it to the page. */
async function startWorkbook(page: PageState): Promise<PageWorkbook> {
  page.message.value = { kind: 'done', text: `${PAGE.starting} …` };
  const { startPageWorkbook } = await import(/* webpackChunkName: "workbook" */ './startWorkbook.ts');
  const workbook = startPageWorkbook(part('grid'), `${PAGE.workbook}. ${PAGE.toGrid}`);
  workbook.host.onChange(() => (page.changed.value = true));
  workbook.onCell((cell) => (page.cell.value = cell));
  followColours(workbook);
  moveBetweenRegions([
    { element: part('head'), focus: () => focusFirst(part('head')) },
    { element: part('workbook'), focus: workbook.focus },
    { element: part('pane'), focus: () => focusFirst(part('pane')) },
  ]);
  page.workbook.value = workbook;
  page.message.value = undefined;
  return workbook;
}

/** The pane follows what is opened and where the user goes; the header follows what the pane does with the file. */
function join(page: PageState, session: Session): void {
  session.host.onSelect((at) => (session.selected.value = at));
  let hasBorrowed = false;
  page.afterOpening.value = async (asOf, settings) => {
    session.home.value = undefined;
    // What was said stays for the next file; what came with the demonstration goes with it.
    if (settings !== undefined || hasBorrowed) session.given.value = settings ?? {};
    hasBorrowed = settings !== undefined;
    if (asOf !== undefined) session.asOf.value = asOf;
    await readHere(session, undefined, settings);
  };
  effect(() => {
    const info = session.workbook.value;
    if (info !== undefined && page.fileName.peek() !== undefined) page.fileName.value = info.fileName;
  });
}

/** The grid draws its own colours: it is told which the system wants, now and when that changes. */
function followColours(workbook: PageWorkbook): void {
  const dark = window.matchMedia('(prefers-color-scheme: dark)');
  workbook.setDark(dark.matches);
  dark.addEventListener('change', () => workbook.setDark(dark.matches));
}

/** Has the browser ask before changes are lost. */
function guardChanges(page: PageState): void {
  window.addEventListener('beforeunload', (event) => {
    if (page.changed.value) event.preventDefault();
  });
}

void start();
