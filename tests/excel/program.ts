import type { Block } from '../../src/report/sheet.ts';
import { address } from '../../src/report/sheet.ts';
import { calculate } from './cellEntry.ts';
import type { Faults, RequestRefusal, Traffic } from './faults.ts';
import { noFaults, noTraffic, refusalOf } from './faults.ts';
import type { Member } from './member.ts';
import { notModelled } from './member.ts';
import type { KeptObjects, Request, Response } from './requestInterpreter.ts';
import { answerRequest } from './requestInterpreter.ts';
import type { ModelWorkbook } from './workbookModel.ts';
import { emptyWorkbook, sheetNamed } from './workbookModel.ts';
import { workbookMember } from './workbookMember.ts';

/** A call of a function by the program: number of the call, name of the function, arguments. */
export type FunctionCall = readonly [number, string, readonly unknown[]];

/** The program at the far end of the library's line, with its workbook, and what a test may turn and read. */
export type Program = {
  readonly workbook: ModelWorkbook;
  readonly faults: Faults;
  readonly traffic: Traffic;
  /** What the functions' runtime sent back, by the number of the invocation. */
  readonly results: Map<number, readonly unknown[]>;
  /** Takes a message of the library; answers go to `send`. */
  readonly take: (message: string) => void;
  /** The user selects a block, or something that is no range. */
  readonly userSelects: (sheet: string, block: Block | undefined) => void;
  /** The user opens the pane, after the page has run for the functions alone. */
  readonly userOpensPane: () => void;
  /** The user ends typing into a cell; what waited for it goes on. */
  readonly userEndsEdit: () => void;
  /** The program calls functions; each is its number, its name and its arguments. */
  readonly invoke: (calls: readonly FunctionCall[]) => void;
  /** Forgets what went over the line so far. */
  readonly resetTraffic: () => void;
};

type Message = { id: number; flags: number; message: { body: Request } };

const GENERIC_MESSAGE = 3;
const RESPONSE = 2;

/**
 * Starts the program with a workbook that has these sheets.
 * @param send  hands a message to the library, in whatever page it runs
 */
export function startProgram(sheets: readonly string[], send: (message: string) => void): Program {
  const workbook = emptyWorkbook(sheets);
  const [faults, traffic, results] = [noFaults(), noTraffic(), new Map<number, readonly unknown[]>()];
  const waiting: string[] = [];
  const answer = answerer(workbook, faults, traffic, results, waiting);
  const take = (text: string): void => {
    const message = answer(text);
    if (message !== undefined) send(JSON.stringify(message));
  };
  const tell = (entries: unknown[]): void =>
    send(JSON.stringify({ type: GENERIC_MESSAGE, message: { entries } }));
  workbook.onSelect = () => void setTimeout(() => tell(selectionEvents(workbook)));
  return {
    ...{ workbook, faults, traffic, results, take },
    userSelects: (name, block) => {
      const sheet = sheetNamed(workbook, name)!;
      workbook.active = sheet;
      workbook.selected = block === undefined ? undefined : { sheet, block };
      workbook.onSelect();
    },
    userOpensPane: () => tell([event(EVENTS.visibilityChanged, { visibility: 'Visible' }, '')]),
    userEndsEdit: () => {
      faults.isEditing = false;
      waiting.splice(0).forEach(take);
    },
    invoke: (calls) => tell(calls.map(invocation)),
    resetTraffic: () => void Object.assign(traffic, noTraffic()),
  };
}

function answerer(
  workbook: ModelWorkbook,
  faults: Faults,
  traffic: Traffic,
  results: Program['results'],
  waiting: string[],
): (text: string) => object | undefined {
  const kept: KeptObjects = new Map();
  const services = (name: string): Member => service(name, results);
  return (text) => {
    const { id, flags, message } = JSON.parse(text) as Message;
    const bytes = new TextEncoder().encode(text).length;
    const isOwn = message.body.Actions.every(isClearing);
    if (isOwn) traffic.clearings += 1;
    else traffic.syncs += 1;
    const refusal = isOwn ? undefined : refusalOf(faults, traffic, flags, bytes);
    if (refusal === 'wait') {
      traffic.syncs -= 1;
      return void waiting.push(text);
    }
    if (refusal !== undefined && !(refusal.status === 503 && faults.isDoneAllTheSame))
      return refused(id, refusal);
    if (!isOwn) traffic.requestBytes.push(bytes);
    const body = answerRequest(message.body, workbookMember(workbook), services, kept);
    if (workbook.changed) calculate(workbook);
    workbook.changed = false;
    if (refusal !== undefined) return refused(id, refusal);
    noteNotModelled(traffic, body);
    traffic.answerBytes.push(JSON.stringify(body).length);
    if (traffic.answerBytes.at(-1)! > faults.mostBytes) return refused(id, TOO_LARGE);
    return { type: RESPONSE, id, message: { statusCode: 200, headers: {}, body } };
  };
}

const TOO_LARGE = {
  status: 413,
  code: 'ResponsePayloadSizeLimitExceeded',
  message: 'the answer is too large',
};

function refused(id: number, { status, code, message }: RequestRefusal): object {
  const body = { error: { code, message } };
  return { type: RESPONSE, id, message: { statusCode: status, headers: {}, body } };
}

// The library's own requests: when it has booted, and after each run.
const isClearing = ({ ActionType, Name }: Request['Actions'][number]): boolean =>
  ActionType === 1 || Name === '_RemoveReference' || Name === 'NotifyActionHandlerReady';

function noteNotModelled(traffic: Traffic, { Error: error }: Response): void {
  if (error?.Code === 'NotModelled') traffic.notModelled.push(error.Message);
}

function service(name: string, results: Program['results']): Member {
  if (name.endsWith('AddinInternalService'))
    return { of: name, call: { NotifyActionHandlerReady: () => undefined } };
  if (name.endsWith('AppRuntimeService')) return { of: name };
  if (!name.endsWith('ExcelServices.CustomFunctions')) return notModelled(name);
  const take = (answers: readonly (readonly unknown[])[]): void =>
    answers.forEach((each) => results.set(each[0] as number, each.slice(1)));
  return { of: name, call: { SetInvocationArrayResults: take } };
}

const FUNCTION_CALL = { messageCategory: 1, messageType: 1000 };

// Errors are handed over as such; the metadata of every function asks for that.
const ERRORS_ALLOWED = 4;

function invocation([id, name, given]: FunctionCall): object {
  return { ...FUNCTION_CALL, message: JSON.stringify([id, name, given, 'Sheet1!A1', ERRORS_ALLOWED]) };
}

const EVENTS = { activated: 11, selectionChanged: 14, visibilityChanged: 65_539 } as const;

// The program tells of both each time, so that no order of the two can be relied on.
function selectionEvents({ active, selected }: ModelWorkbook): object[] {
  const cell = selected === undefined ? '' : address(selected.block.row, selected.block.column);
  return [
    event(EVENTS.activated, { worksheetId: active.id }),
    event(EVENTS.selectionChanged, { address: cell, worksheetId: active.id }),
  ];
}

function event(messageType: number, told: object, targetId = 'Workbook'): object {
  return { messageCategory: 65_536, messageType, targetId, message: JSON.stringify(told) };
}
