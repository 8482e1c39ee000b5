import type { Outcome } from '../../../src/basics/outcome.ts';
import { problem } from '../../../src/basics/outcome.ts';
import type { ProblemCode } from '../../../src/basics/problemText.ts';

/** Codes of the program's own errors, with what a user is told. */
const SENTENCES: Readonly<Record<string, ProblemCode>> = {
  InvalidOperationInCellEditMode: 'excelEditing',
  RequestPayloadSizeLimitExceeded: 'excelTooLarge',
  ResponsePayloadSizeLimitExceeded: 'excelTooLarge',
  ConnectionFailure: 'excelLost',
  RequestAborted: 'excelLost',
  ApiNotFound: 'excelTooOld',
  ApiNotAvailable: 'excelTooOld',
  AccessDenied: 'excelProtected',
};

/** What Excel refused, as a problem; anything else, such as a cancellation, is thrown on. */
export function excelProblem(error: unknown): Extract<Outcome<never>, { ok: false }> {
  if (!(error instanceof OfficeExtension.Error)) throw error;
  const because = SENTENCES[error.code] ?? 'excelRefused';
  return problem('badInput', because, 'workbook', error.code, { more: { message: error.message } });
}

/** The problem of a change that failed and could not be taken back. */
export function leftBehind(cause: unknown, what: string): Extract<Outcome<never>, { ok: false }> {
  const message = cause instanceof Error ? cause.message : String(cause);
  return problem('badInput', 'excelLeftBehind', 'workbook', what, { more: { message } });
}
