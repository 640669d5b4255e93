/** Losses seen in so many piece-uses (one piece fitted for one show is one piece-use). */
export interface LossRecord {
  readonly losses: number;
  readonly uses: number;
}

/** What was believed of the loss per use, what was counted, and what is believed now (gamma: shape = losses, rate = uses; mean = losses / uses). */
export interface LearnedLosses {
  readonly prior: LossRecord;
  readonly counted: LossRecord;
  readonly priorMean: number;
  readonly posteriorMean: number;
}

export function learnLosses(prior: LossRecord, counted: LossRecord = { losses: 0, uses: 0 }): LearnedLosses {
  return {
    prior,
    counted,
    priorMean: prior.losses / prior.uses,
    posteriorMean: (prior.losses + counted.losses) / (prior.uses + counted.uses),
  };
}

/** One count at return. `damaged` came back and may not be used again. */
export interface ReturnCount {
  readonly sent: number;
  readonly returned: number;
  readonly damaged: number;
}

/** What a count makes a loss: what did not come back, and what came back unfit. */
export const lossesOf = ({ sent, returned, damaged }: ReturnCount): number => sent - returned + damaged;

/** A count as it was recorded: never changed. A correction names the record that it takes the place of; with nothing sent and no uses it takes it back. */
export interface CountRecord extends ReturnCount {
  readonly id: string;
  readonly corrects: string | null;
  /** Instant, ISO 8601 in UTC with milliseconds. */
  readonly at: string;
  /** Piece-uses that the count covers. */
  readonly uses: number;
}

/** Those that no other record takes the place of. */
export function countsInForce<R extends CountRecord>(records: readonly R[]): readonly R[] {
  const corrected = new Set(records.map((each) => each.corrects).filter((each) => each !== null));
  return records.filter((each) => !corrected.has(each.id));
}

/** What the records add to a sum that holds those made up to the instant `through` already (null: holds none of them). A later correction counts by its difference. */
export function evidenceSince(records: readonly CountRecord[], through: string | null): LossRecord {
  const now = sumOf(records);
  const then = through === null ? { losses: 0, uses: 0 } : sumOf(records.filter((each) => each.at <= through));
  return { losses: now.losses - then.losses, uses: now.uses - then.uses };
}

function sumOf(records: readonly CountRecord[]): LossRecord {
  const inForce = countsInForce(records);
  return {
    losses: inForce.reduce((sum, each) => sum + lossesOf(each), 0),
    uses: inForce.reduce((sum, each) => sum + each.uses, 0),
  };
}
