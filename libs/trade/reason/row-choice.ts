interface RowFigures {
  readonly stops: readonly { readonly firstOff: number; readonly pieces: number }[];
  readonly lostMm: number;
  readonly nextBestMm?: number;
  readonly freeAheadMm: number;
  readonly movedRows: number;
  readonly isLevelled: boolean;
}

/** Why a row of a truck stands where it does: codes and millimetres, as the packing engine chose. */
export type RowChoiceFact =
  | ({ readonly code: 'kept' } & RowFigures)
  | ({ readonly code: 'least-lost' } & RowFigures)
  | ({ readonly code: 'shorter-later' } & RowFigures)
  | ({ readonly code: 'only' } & RowFigures);
