/** What is guarded and can be proposed. A record is an examination. */
export type ProposedKind = 'model' | 'item' | 'record' | 'system' | 'load rule' | 'examination rule';

/** What waits for the safety officer, and what holds meanwhile. Figures are as they are shown; null: it says nothing. */
export type WaitingFact =
  | {
      readonly code: 'changed';
      readonly of: ProposedKind;
      readonly id: string;
      readonly field: string;
      readonly was: string | null;
      readonly wanted: string | null;
    }
  /** New on file: nothing of it is used until it is accepted. */
  | { readonly code: 'new'; readonly of: ProposedKind; readonly id: string }
  | { readonly code: 'examination'; readonly item: string; readonly on: string; readonly report: string | null };
