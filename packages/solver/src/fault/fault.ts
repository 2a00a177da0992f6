/** Every way Flathead can refuse an input or report a failure. Closed: a new way gets a new code. */
export type FaultCode =
  | 'USAGE' // a command line that makes no sense
  | 'NO_FILE' // a file that is not there, or can't be read or written
  | 'NOT_JSON' // the text is empty or no JSON
  | 'UNREADABLE' // a list, drawing or map that holds nothing to take
  | 'TOO_LARGE' // the file or the count it asks for is beyond what is read
  | 'SCHEMA' // a value of the wrong type, a missing or an unknown key
  | 'OUT_OF_RANGE' // a number outside its physical or supported range
  | 'UNKNOWN_MATERIAL'
  | 'UNKNOWN_SCREW'
  | 'BAD_SHAPE' // self-crossing, open or zero-area outline
  | 'OUTSIDE' // a site, rib, fastener, load or support off the part it belongs to
  | 'OVERLAP' // sites that overlap
  | 'MECHANISM' // free to move as a rigid body
  | 'DISCONNECTED' // a part not joined to the rest
  | 'NOT_YET' // recognised but not supported by this version
  | 'MESH' // refinement could not meet its promise
  | 'NOT_DEFINITE' // the stiffness lost definiteness
  | 'CANCELLED'
  | 'WORKER_LOST'
  | 'INTERNAL';

/** The plain form of a fault, as it crosses workers and as `--json` prints it. */
export interface FaultReport {
  readonly code: FaultCode;
  /** What, where, which value, what was expected, what to do next; one or two sentences. */
  readonly message: string;
  /** Path of the offending value in the model, such as `fasteners.2.at`; empty when there is none. */
  readonly path: string;
  readonly details: Readonly<Record<string, unknown>>;
}

/** A refusal that an engineer can act on. Thrown by every room; reported by {@link faultReport}. */
export class Fault extends Error {
  override readonly name = 'Fault';
  constructor(
    readonly code: FaultCode,
    message: string,
    readonly path: string = '',
    readonly details: Readonly<Record<string, unknown>> = {},
  ) {
    super(message);
  }
}

/** Plain report of anything thrown; what is not a {@link Fault} becomes `INTERNAL`. */
export function faultReport(thrown: unknown): FaultReport {
  if (thrown instanceof Fault)
    return { code: thrown.code, message: thrown.message, path: thrown.path, details: thrown.details };
  const message = thrown instanceof Error ? thrown.message : String(thrown);
  return { code: 'INTERNAL', message, path: '', details: {} };
}
