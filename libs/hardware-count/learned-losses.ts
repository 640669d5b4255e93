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
