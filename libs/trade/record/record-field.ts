/** What the record of an examination may be asked for beside its day and outcome, in the order in which a report is read. */
export const recordFields = [
  ...(['employer', 'premises', 'identity', 'manufactured', 'previousOn', 'workingLoadLimit'] as const),
  ...(['firstAfterInstallation', 'installedStatement', 'basis', 'statement', 'defects', 'nextLatestOn', 'tests'] as const),
  ...(['examiner', 'examinerAddress', 'qualifications', 'capacity', 'employedBy', 'authenticatedBy'] as const),
  ...(['remarks', 'report', 'reportOn', 'reportFile'] as const),
] as const;

export type RecordField = (typeof recordFields)[number];

/** Lists of fields that a law gives. */
export const recordLists = ['LOLER 1998 Schedule 1'] as const;
export type RecordList = (typeof recordLists)[number];

/** What a rule counts by. */
export const ruleBases = ['time', 'before use', 'after installation', 'after an event', 'lifts', 'hours'] as const;
export type RuleBasis = (typeof ruleBases)[number];

/** Why a record is kept, and until when: the latest of what applies. */
export type KeptUntil =
  | { readonly code: 'day'; readonly on: string }
  | { readonly code: 'next-report'; readonly atLeast: string | null }
  | { readonly code: 'in-use'; readonly atLeast: string | null }
  | { readonly code: 'not-said' };

/** What happened to an item, as stations of its life. */
export type LifeStation =
  | { readonly code: 'bought'; readonly on: string }
  | { readonly code: 'first-used'; readonly on: string }
  | { readonly code: 'declared'; readonly on: string }
  | {
      readonly code: 'examined';
      readonly on: string;
      readonly passed: boolean;
      readonly report: string | null;
      readonly corrected: boolean;
    }
  | { readonly code: 'happened'; readonly on: string; readonly what: string }
  | { readonly code: 'out'; readonly on: string; readonly what: string; readonly sentence: string }
  | { readonly code: 'flown'; readonly on: string; readonly until: string; readonly tour: string };
