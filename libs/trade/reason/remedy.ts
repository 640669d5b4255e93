import type { PlainDate } from '#kernel';

/** What would free a box that is held back, the quickest first. */
export type RemedyFact =
  | { readonly code: 'examination'; readonly box: string; readonly day: PlainDate }
  | { readonly code: 'release from quarantine'; readonly box: string; readonly remark: string | null }
  | { readonly code: 'repair'; readonly box: string; readonly remark: string | null }
  | { readonly code: 'another depot'; readonly box: string; readonly depot: string }
  | { readonly code: 'return'; readonly box: string; readonly tour: string; readonly until: PlainDate; readonly freeFrom: PlainDate }
  | { readonly code: 'longer hire'; readonly box: string; readonly from: PlainDate; readonly until: PlainDate; readonly day: PlainDate };
