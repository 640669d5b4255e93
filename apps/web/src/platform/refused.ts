export interface Fault {
  readonly field?: string;
  readonly row?: number;
  readonly column?: string;
  readonly value: unknown;
  readonly wanted: string;
  /** The field as it is called on screens, where that is otherwise. */
  readonly named?: string;
  /** Of an edit that met another: what stands on file now. */
  readonly onFile?: unknown;
}

/**
 * What kind of no it is: `network` nobody answered; `bad input` what was sent is wrong, with its faults; `refused` the world or the rules say no;
 * `fault` something broke on the other side; `signed out` sign in again first.
 */
export type RefusalKind = 'network' | 'bad input' | 'refused' | 'fault' | 'signed out';

interface RefusedDetails {
  readonly faults?: readonly Fault[] | undefined;
  /** Under which the fault stands in the log of the house. */
  readonly incident?: string | undefined;
  /** Of a write of which it is not known yet whether it was saved: what to ask for. */
  readonly openRequestId?: string | undefined;
}

/** What the other side said no to: a sentence, its kind, and where it knows them the faults with field, value and what would be right. */
export class Refused extends Error {
  readonly faults: readonly Fault[];
  readonly incident: string | undefined;
  readonly openRequestId: string | undefined;

  constructor(
    sentence: string,
    readonly kind: RefusalKind,
    { faults = [], incident, openRequestId }: RefusedDetails = {},
  ) {
    super(sentence);
    this.faults = faults;
    this.incident = incident;
    this.openRequestId = openRequestId;
  }
}
