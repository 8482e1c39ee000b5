/** What can go wrong between the library and the program. A test sets it before it acts. */
export type Faults = {
  /** Requests and answers above this many bytes are refused, as the program in a browser does. */
  mostBytes: number;
  /** Whether the user is in the middle of typing into a cell. */
  isEditing: boolean;
  /** The sync, counted from 1, from which on the connection is lost, and for how many syncs. */
  lostAt: number | undefined;
  lostFor: number;
  /** Whether what was asked is done all the same, and only the answer is lost. */
  isDoneAllTheSame: boolean;
};

/** A line without faults, with the published limit of the program in a browser. */
export function noFaults(): Faults {
  return { mostBytes: 5_000_000, isEditing: false, lostAt: undefined, lostFor: 1, isDoneAllTheSame: false };
}

/** What went over the line. */
export type Traffic = {
  /** Requests that carry work; the library's own clearing away is counted apart. */
  syncs: number;
  clearings: number;
  /** Bytes of each request that carries work. */
  readonly requestBytes: number[];
  readonly answerBytes: number[];
  /** Members that were asked for and are not modelled. */
  readonly notModelled: string[];
};

/** Nothing yet. */
export function noTraffic(): Traffic {
  return { syncs: 0, clearings: 0, requestBytes: [], answerBytes: [], notModelled: [] };
}

const DELAY_FOR_CELL_EDIT = 64;

/** A refusal of a whole request: the status and error that come back in place of an answer. */
export type RequestRefusal = { readonly status: number; readonly code: string; readonly message: string };

/** Why a request is not even looked at, "wait" where the program holds it back, or undefined. */
export function refusalOf(
  faults: Faults,
  traffic: Traffic,
  flags: number,
  bytes: number,
): RequestRefusal | 'wait' | undefined {
  const { lostAt, lostFor, isEditing, mostBytes } = faults;
  if (lostAt !== undefined && traffic.syncs >= lostAt && traffic.syncs < lostAt + lostFor)
    return { status: 503, code: 'ConnectionFailure', message: 'the connection is lost' };
  if (isEditing) {
    if ((flags & DELAY_FOR_CELL_EDIT) !== 0) return 'wait';
    const message = 'the program is in cell-editing mode';
    return { status: 400, code: 'InvalidOperationInCellEditMode', message };
  }
  if (bytes <= mostBytes) return undefined;
  const message = 'the size of the request is above the limit';
  return { status: 413, code: 'RequestPayloadSizeLimitExceeded', message };
}
