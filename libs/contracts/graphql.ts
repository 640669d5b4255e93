/* eslint-disable */
/** Internal type. DO NOT USE DIRECTLY. */
type Exact<T extends { [key: string]: unknown }> = { [K in keyof T]: T[K] };
/** Internal type. DO NOT USE DIRECTLY. */
export type Incremental<T> = T | { [P in keyof T]?: P extends ' $fragmentName' | '__typename' ? T[P] : never };
import type { BetweenShows, CartsResult, DueResult, HangResult, HardwareResult, PackPlan, PicksHead, TruckResultOne, TrucksHead, WholeTour, WorkList } from '../pack-plan/index.js';
import type { Item, Tour, Venue } from '../tour-file/index.js';
import type { SeasonAnswer, SeenItems } from '../inspection-calendar/index.js';
import type { DocumentTypeDecoration } from '@graphql-typed-document-node/core';
/** A column of the CSV of items, and what is to stand in it; empty clears it. */
export type CellInput = {
  column: string;
  value: string;
};

export type CountInput = {
  /** Of those that came back, unfit for use. */
  damaged: number;
  /** Key of the line, as in the plan. */
  key: string;
  /** Which batches they are of; left out: the batches stay as they are on file. */
  lots?: Array<LotLossInput> | null | undefined;
  /** What came back at all, the damaged among it. */
  returned: number;
  sent: number;
};

export type CountedInTrunk = {
  count: number;
  lot: string | number;
};

/** The second person of a release, from outside, by name. */
export type CountersignInput = {
  company: string;
  name: string;
  /** Where they stood, such as the grid. */
  place: string;
  /** What they are there, such as rigger of the venue. */
  role: string;
};

export type DeputyInput = {
  /** For what belongs to this depot alone. */
  depot?: string | null | undefined;
  /** First day, YYYY-MM-DD. */
  from: string;
  /** In the place of which safety officer. */
  officerId: string | number;
  /** Lets in once, within a day, to choose the own one; wanted where no safety officer has given this person one yet. */
  password?: string | null | undefined;
  /** Who acts. */
  personId: string | number;
  reason: string;
  /** By whose calendar: a zone of the time zone database. */
  timeZone: string;
  /** For this tour alone. */
  tourId?: string | number | null | undefined;
  /** Last day. */
  until: string;
};

/** The first people of a house: who sets it up, and the safety officer. */
export type FirstPeopleInput = {
  email: string;
  name: string;
  officerEmail: string;
  officerName: string;
  /** Lets in once, within a day; they choose their own then. */
  officerPassword: string;
  password: string;
};

export type HoldInput = {
  from: string;
  /** The hold ends by itself after so many hours. */
  hours: number;
  items: Array<string>;
  /** Who or what it is held for. */
  name: string;
  to: string;
};

/** Kit of others as it is delivered. */
export type LentKitInput = {
  /** lender, rigging contractor, venue */
  by: string;
  /** In which state it was delivered. */
  condition: string;
  /** Of a batch. */
  count?: number | null | undefined;
  /** The depot or place by its name in the register. */
  depot: string;
  kind: string;
  /** What its plate says. */
  massKg?: number | null | undefined;
  /** A model on file of that kind: its class, rated load and mass are what is planned with. */
  model: string;
  on: string;
  owner: string;
  /** What its plate says. */
  ratedLoad?: string | null | undefined;
  /** Its serial, where it has one; else it gets a name here. */
  serial?: string | null | undefined;
};

/** Pieces of one batch among those of a line that are gone or unfit: the batch becomes that much smaller. */
export type LotLossInput = {
  /** Gone: retired. */
  lost: number;
  lot: string | number;
  /** Back and unfit: out of service. */
  unfit: number;
};

/** Somebody from outside who signs: a person of that show, not of the house. */
export type OutsideInput = {
  company: string;
  /** Where they stood, such as the grid. */
  place: string;
  /** What they are there, such as rigger of the venue. */
  role: string;
};

export type PersonInput = {
  email: string;
  name: string;
  /** Lets in once, within a day, to choose the own one. */
  password: string;
  /** warehouse or system; a safety officer is proposed, and accepted by one */
  role: string;
};

export type PossibleDayInput = {
  depot?: string | null | undefined;
  onDay: string;
  remark?: string | null | undefined;
  showId?: string | number | null | undefined;
  tourId?: string | number | null | undefined;
};

export type VisitResultInput = {
  defectBy?: string | null | undefined;
  itemId: string | number;
  nextLatestOn?: string | null | undefined;
  /** pass or fail */
  outcome: string;
  remark?: string | null | undefined;
  report?: string | null | undefined;
};

export type SignOutMutationVariables = Exact<{ [key: string]: never; }>;


export type SignOutMutation = { signOut: boolean };

export type DeputiesQueryVariables = Exact<{ [key: string]: never; }>;


export type DeputiesQuery = { deputies: Array<{ id: string, personId: string, person: string, officerId: string, officer: string, from: string, until: string, depot: string | null, tour: string | null, reason: string, namedBy: string, state: string }>, people: Array<{ id: string, name: string, role: string, state: string, passwordByOfficer: boolean }>, tours: { edges: Array<{ node: { id: string, name: string } }> } };

export type NameDeputyMutationVariables = Exact<{
  deputy: DeputyInput;
}>;


export type NameDeputyMutation = { nameDeputy: string };

export type SignDeputyMutationVariables = Exact<{
  id: string | number;
}>;


export type SignDeputyMutation = { signDeputy: boolean };

export type WithdrawDeputyMutationVariables = Exact<{
  id: string | number;
}>;


export type WithdrawDeputyMutation = { withdrawDeputy: boolean };

export type SetOnePersonMutationVariables = Exact<{
  isOn: boolean;
  reason: string;
}>;


export type SetOnePersonMutation = { setOnePerson: boolean };

export type PeopleQueryVariables = Exact<{ [key: string]: never; }>;


export type PeopleQuery = { people: Array<{ id: string, name: string, email: string, role: string, state: string, sessions: number, proposedBy: string | null }> };

export type AddPersonMutationVariables = Exact<{
  person: PersonInput;
}>;


export type AddPersonMutation = { addPerson: { id: string } };

export type ChangePasswordMutationVariables = Exact<{
  old: string;
  next: string;
}>;


export type ChangePasswordMutation = { changePassword: boolean };

export type RenamePersonMutationVariables = Exact<{
  id: string | number;
  name: string;
  was?: string | null | undefined;
}>;


export type RenamePersonMutation = { renamePerson: { id: string, name: string } };

export type RenewPasswordMutationVariables = Exact<{
  id: string | number;
  password: string;
}>;


export type RenewPasswordMutation = { renewPassword: boolean };

export type DisablePersonMutationVariables = Exact<{
  id: string | number;
}>;


export type DisablePersonMutation = { disablePerson: boolean };

export type EnablePersonMutationVariables = Exact<{
  id: string | number;
}>;


export type EnablePersonMutation = { enablePerson: boolean };

export type ChangeRoleMutationVariables = Exact<{
  id: string | number;
  role: string;
  was?: string | null | undefined;
}>;


export type ChangeRoleMutation = { changeRole: boolean };

export type ProposeOfficerMutationVariables = Exact<{
  id: string | number;
}>;


export type ProposeOfficerMutation = { proposeOfficer: boolean };

export type AnswerProposalMutationVariables = Exact<{
  id: string | number;
  accept: boolean;
  password?: string | null | undefined;
}>;


export type AnswerProposalMutation = { answerProposal: boolean };

export type RemovePersonMutationVariables = Exact<{
  id: string | number;
}>;


export type RemovePersonMutation = { removePerson: boolean };

export type SessionsQueryVariables = Exact<{ [key: string]: never; }>;


export type SessionsQuery = { sessions: Array<{ id: string, openedAt: unknown, seenAt: unknown, address: string, device: string, isThis: boolean }> };

export type EndSessionsMutationVariables = Exact<{
  id?: string | number | null | undefined;
}>;


export type EndSessionsMutation = { endSessions: boolean };

export type SetUpMutationVariables = Exact<{
  code: string;
  people: FirstPeopleInput;
}>;


export type SetUpMutation = { setUp: boolean };

export type SignInMutationVariables = Exact<{
  email: string;
  password: string;
}>;


export type SignInMutation = { signIn:
    | { __typename: 'Account', id: string }
    | { __typename: 'SignInRefusal', sentence: string }
   };

export type ToSetUpQueryVariables = Exact<{ [key: string]: never; }>;


export type ToSetUpQuery = { isToSetUp: boolean };

export type FirstPasswordMutationVariables = Exact<{
  next: string;
}>;


export type FirstPasswordMutation = { changePassword: boolean };

export type BeginningQueryVariables = Exact<{ [key: string]: never; }>;


export type BeginningQuery = { beginningOfHouse: { officers: number, warehouse: number, examinationRules: number, loadRules: number, systems: number, approvedSystems: number, waiting: number, tours: number, hangs: number, plans: number, models: Array<{ kind: string, count: number }>, items: Array<{ kind: string, count: number }> } };

export type DoMoveMutationVariables = Exact<{
  planId: string | number;
  box: string;
  from: string;
  to: string;
}>;


export type DoMoveMutation = { doMove: WorkList };

export type UndoMoveMutationVariables = Exact<{
  planId: string | number;
  box: string;
  from: string;
  to: string;
}>;


export type UndoMoveMutation = { undoMove: WorkList };

export type WorkListQueryVariables = Exact<{
  planId: string | number;
}>;


export type WorkListQuery = { workList: WorkList };

export type SetStackMutationVariables = Exact<{
  cart: string | number;
  serials: Array<string> | string;
}>;


export type SetStackMutation = { setStack: { summary: { id: string } } };

export type CountSheetQueryVariables = Exact<{
  tourId: string | number;
  showId: string | number;
}>;


export type CountSheetQuery = { countSheet: { tourId: string, showId: string, name: string, tourName: string, notCountedBefore: Array<{ showId: string, name: string }>, lines: Array<{ key: string, item: string, fitted: number, spares: number, learned: { priorMean: number, losses: number, uses: number, posteriorMean: number, sparesByPriorAlone: number } | null, counted: { id: string, sent: number, returned: number, damaged: number, losses: number, countedBy: string, countedAt: string } | null }>, records: Array<{ id: string, key: string, shows: Array<string>, sent: number, returned: number, damaged: number, losses: number, uses: number, corrects: string | null, reason: string | null, countedBy: string, countedAt: string, inForce: boolean }> } };

export type RecordCountsMutationVariables = Exact<{
  tourId: string | number;
  showIds: Array<string | number> | string | number;
  lines: Array<CountInput> | CountInput;
}>;


export type RecordCountsMutation = { recordCounts:
    | { __typename: 'CountRefusal', sentence: string }
    | { __typename: 'CountSheet', showId: string }
   };

export type CorrectCountMutationVariables = Exact<{
  id: string | number;
  sent: number;
  returned: number;
  damaged: number;
  reason: string;
}>;


export type CorrectCountMutation = { correctCount: { showId: string } };

export type TakeCountBackMutationVariables = Exact<{
  id: string | number;
  reason: string;
}>;


export type TakeCountBackMutation = { takeCountBack: { showId: string } };

export type DatesQueryVariables = Exact<{
  first?: number | null | undefined;
  after?: string | null | undefined;
  depot?: string | null | undefined;
  tour?: string | null | undefined;
  kind?: string | null | undefined;
  days?: number | null | undefined;
}>;


export type DatesQuery = { examinedItems: { pageInfo: { hasNextPage: boolean, endCursor: string | null }, edges: Array<{ node: { id: string, kind: string, model: string, place: string, dueOn: string | null, dueState: string | null, state: string, count: number | null } }> } };

export type DatesChoicesQueryVariables = Exact<{ [key: string]: never; }>;


export type DatesChoicesQuery = { depots: Array<string>, tours: { edges: Array<{ node: { id: string, name: string } }> } };

export type ProposalsQueryVariables = Exact<{
  after?: string | null | undefined;
}>;


export type ProposalsQuery = { proposals: { totalCount: number, newest: string | null, holdsOwn: boolean, pageInfo: { hasNextPage: boolean, endCursor: string | null }, edges: Array<{ node: { id: string, kind: string, subject: string, itemId: string | null, sentence: string, proposedBy: string, proposedAt: string, reason: string | null, isOwn: boolean, figures: Array<{ name: string, was: string | null, wanted: string | null }> } }> } };

export type HowManyWaitQueryVariables = Exact<{ [key: string]: never; }>;


export type HowManyWaitQuery = { proposals: { totalCount: number } };

export type WaitsOfItemQueryVariables = Exact<{
  id: string | number;
}>;


export type WaitsOfItemQuery = { proposalsOfItem: Array<{ id: string, kind: string, subject: string, sentence: string, proposedBy: string, figures: Array<{ name: string, was: string | null, wanted: string | null }> }> };

export type WaitsOfCatalogueQueryVariables = Exact<{ [key: string]: never; }>;


export type WaitsOfCatalogueQuery = { proposalsOfCatalogue: Array<{ id: string, kind: string, subject: string, sentence: string, proposedBy: string, figures: Array<{ name: string, was: string | null, wanted: string | null }> }> };

export type AnswerProposalsMutationVariables = Exact<{
  ids?: Array<string | number> | string | number | null | undefined;
  through?: string | number | null | undefined;
  accept: boolean;
  reason: string;
}>;


export type AnswerProposalsMutation = { answerProposals: number };

export type AnswerAllProposalsMutationVariables = Exact<{
  through: string | number;
  accept: boolean;
  reason: string;
}>;


export type AnswerAllProposalsMutation = { answerAllProposals: { id: string } };

export type ProposalAnsweringQueryVariables = Exact<{ [key: string]: never; }>;


export type ProposalAnsweringQuery = { latestProposalAnswering: { id: string, accept: boolean, reason: string, askedBy: string, isGoing: boolean, total: number, answered: number, looked: number, leftBecause: Array<string>, seconds: number } | null };

export type ShowsToServeQueryVariables = Exact<{ [key: string]: never; }>;


export type ShowsToServeQuery = { tours: { edges: Array<{ node: { id: string, name: string, showNames: Array<{ showId: string, name: string }> } }> } };

export type FirstDayForQueryVariables = Exact<{
  tourId: string | number;
  showId: string | number;
  from: string;
  days: number;
}>;


export type FirstDayForQuery = { firstDayFor: string | null };

export type FleetCalendarQueryVariables = Exact<{
  from: string;
  days: number;
  depot?: string | null | undefined;
}>;


export type FleetCalendarQuery = { depots: Array<string>, fleetCalendar: Array<{ model: string, count: number, days: Array<{ day: string, free: number, promised: number, out: number, short: number }> }> };

export type RemediesQueryVariables = Exact<{
  model: string;
  day: string;
  depot?: string | null | undefined;
}>;


export type RemediesQuery = { remedies: Array<{ serial: string, kind: string, sentence: string }> };

export type OpenHoldsQueryVariables = Exact<{ [key: string]: never; }>;


export type OpenHoldsQuery = { openHolds: Array<{ id: string, name: string, from: string, to: string, until: string, items: Array<string>, barred: Array<string> }> };

export type PlaceHoldMutationVariables = Exact<{
  hold: HoldInput;
}>;


export type PlaceHoldMutation = { placeHold:
    | { __typename: 'BookingRefusal', sentence: string }
    | { __typename: 'Hold', id: string }
   };

export type GiveHoldBackMutationVariables = Exact<{
  id: string | number;
}>;


export type GiveHoldBackMutation = { giveHoldBack: number };

export type FaultSheetQueryVariables = Exact<{
  itemId: string | number;
}>;


export type FaultSheetQuery = { faultSheet: { id: string, kind: string, model: string, state: string, count: number | null, spare: string | null, faults: Array<{ kind: string, what: string, then: string, pieces: number | null, moment: string, by: string }>, fliesIn: Array<{ tourId: string, showId: string, show: string, from: string, load: string, cart: string | null }> } };

export type OpenFaultsQueryVariables = Exact<{
  planId: string | number;
}>;


export type OpenFaultsQuery = { openFaults: Array<{ item: string, kind: string, what: string, then: string, pieces: number | null, moment: string, by: string }> };

export type ReportFaultMutationVariables = Exact<{
  itemId: string | number;
  kind: string;
  what: string;
  then: string;
  pieces?: number | null | undefined;
}>;


export type ReportFaultMutation = { reportFault: { id: string } };

export type FloorCodeQueryVariables = Exact<{
  planId: string | number;
  code: string;
}>;


export type FloorCodeQuery = { floorCode: { id: string, kind: string, model: string, count: number | null, whyNot: unknown, wantedSerials: Array<string> } | null };

export type PrepSheetQueryVariables = Exact<{
  planId: string | number;
}>;


export type PrepSheetQuery = { prepSheet: { uses: Array<{ id: string, kind: string, model: string, count: number | null, depot: string, inside: string | null }>, records: Array<{ item: string, kind: string, agrees: boolean, data: unknown, moment: string, by: string }> } };

export type BenchTestMutationVariables = Exact<{
  planId: string | number;
  itemId: string | number;
  failed: Array<string> | string;
  remark: string;
}>;


export type BenchTestMutation = { benchTest: boolean };

export type ReadSplaysMutationVariables = Exact<{
  planId: string | number;
  load: string;
  splays: Array<number> | number;
}>;


export type ReadSplaysMutation = { readSplays: boolean };

export type CountTrunkMutationVariables = Exact<{
  planId: string | number;
  trunk: string | number;
  counts: Array<CountedInTrunk> | CountedInTrunk;
}>;


export type CountTrunkMutation = { countTrunk: boolean };

export type ReturnSheetQueryVariables = Exact<{
  planId: string | number;
}>;


export type ReturnSheetQuery = { returnSheet: Array<{ id: string, kind: string, model: string, cart: string | null, slot: number | null, load: string | null, back: { moment: string, by: string } | null, seen: { moment: string, by: string, with: string | null, place: unknown } | null }> };

export type ReturnCartMutationVariables = Exact<{
  planId: string | number;
  cart: string | number;
  serials: Array<string | number> | string | number;
}>;


export type ReturnCartMutation = { returnCart: Array<{ id: string }> };

export type ReturnItemsMutationVariables = Exact<{
  planId: string | number;
  items: Array<string | number> | string | number;
}>;


export type ReturnItemsMutation = { returnItems: Array<{ id: string }> };

export type HangModelsQueryVariables = Exact<{ [key: string]: never; }>;


export type HangModelsQuery = { catalogueModels: Array<{ kind: string, model: string, data: unknown }> };

export type AddLoadReadingMutationVariables = Exact<{
  planId: string | number;
  hang: string;
  hole: string;
  place: string;
  readingKg: number;
}>;


export type AddLoadReadingMutation = { addLoadReading: { readings: Array<{ id: string }> } };

export type RiggingRecordQueryVariables = Exact<{
  planId: string | number;
}>;


export type RiggingRecordQuery = { riggingRecord: { readings: Array<{ id: string, hang: string, hole: string, place: string, readingKg: number, readAt: string, readBy: string, verdict: string, sentence: string }>, signOffs: Array<{ id: string, hang: string, kind: string, name: string, remark: string, company: string | null, role: string | null, place: string | null, signedAt: string, signedBy: string }> } };

export type SignOffMutationVariables = Exact<{
  planId: string | number;
  hang: string;
  kind: string;
  name: string;
  remark: string;
  outside?: OutsideInput | null | undefined;
}>;


export type SignOffMutation = { signOff: { signOffs: Array<{ id: string }> } };

export type HouseStateQueryVariables = Exact<{ [key: string]: never; }>;


export type HouseStateQuery = { houseState: { version: string, upSince: unknown, databaseBytes: number | null, grownSince: string | null, connections: number | null, connectionsLimit: number | null, connectionsOfOne: number, lastBackup: unknown, jobsWaiting: number, jobsRunning: number, jobsFailed: number, oldestWaits: number | null, requests: number, turnedAway: number, faults: number, eventLoopMs: number | null, diskFreeBytes: number | null, processes: number | null, tables: Array<{ name: string, bytes: number, rows: number, changedInMonth: number | null, grownBytes: number | null }>, sizes: Array<{ day: string, bytes: number }>, plans: Array<{ kind: string, count: number, seconds: number }> } };

export type InspectedItemsQueryVariables = Exact<{
  ids?: Array<string | number> | string | number | null | undefined;
  kinds?: Array<string> | string | null | undefined;
  depots?: Array<string> | string | null | undefined;
  after?: string | null | undefined;
}>;


export type InspectedItemsQuery = { inspectedItems: { items: unknown, hasMore: boolean } };

export type RulesAndSealQueryVariables = Exact<{ [key: string]: never; }>;


export type RulesAndSealQuery = { rules: unknown, logSeal: { head: string, lines: number, sealedAt: string } | null };

export type SignOffsQueryVariables = Exact<{
  planId: string | number;
}>;


export type SignOffsQuery = { riggingRecord: { signOffs: Array<{ hang: string, kind: string, name: string, remark: string, company: string | null, role: string | null, place: string | null, signedAt: string, signedBy: string }> } };

export type ReportOfItemQueryVariables = Exact<{
  id: string | number;
  after?: string | null | undefined;
}>;


export type ReportOfItemQuery = { item: { records: { pageInfo: { hasNextPage: boolean, endCursor: string | null }, edges: Array<{ node: { id: string, examination: unknown, recordedBy: string, recordedAt: string, reason: string | null, kept: unknown, lines: unknown, file: { name: string, sha256: string } | null } }> } } };

export type LabelItemsQueryVariables = Exact<{
  search?: string | null | undefined;
  kind?: string | null | undefined;
  serials?: Array<string | number> | string | number | null | undefined;
  after?: string | null | undefined;
}>;


export type LabelItemsQuery = { items: { totalCount: number, isMoreThanCounted: boolean, pageInfo: { hasNextPage: boolean, endCursor: string | null }, edges: Array<{ node: { id: string, kind: string, model: string } }> } };

export type LentKitQueryVariables = Exact<{ [key: string]: never; }>;


export type LentKitQuery = { lentKit: Array<{ itemId: string, kind: string, model: string, count: number | null, depot: string, owner: string, lent: unknown, barredBy: string | null }> };

export type TakeInLentKitMutationVariables = Exact<{
  kit: LentKitInput;
}>;


export type TakeInLentKitMutation = { takeInLentKit: { itemId: string, waits: Array<string> } };

export type ClearLentPaperMutationVariables = Exact<{
  itemId: string | number;
  reason: string;
}>;


export type ClearLentPaperMutation = { clearLentPaper: boolean };

export type GiveBackLentKitMutationVariables = Exact<{
  itemId: string | number;
  on: string;
  condition: string;
}>;


export type GiveBackLentKitMutation = { giveBackLentKit: boolean };

export type ModelsToTakeInQueryVariables = Exact<{ [key: string]: never; }>;


export type ModelsToTakeInQuery = { catalogueModels: Array<{ kind: string, model: string }> };

export type LogLinesQueryVariables = Exact<{
  act?: string | number | null | undefined;
  item?: string | number | null | undefined;
  tour?: string | number | null | undefined;
  person?: string | number | null | undefined;
  day?: string | null | undefined;
  zone?: string | null | undefined;
  after?: string | null | undefined;
}>;


export type LogLinesQuery = { log: { pageInfo: { hasNextPage: boolean, endCursor: string | null }, edges: Array<{ node: { id: string, sentence: string, itemId: string | null, tourId: string | null, tourName: string | null, showId: string | null, moreRows: number, rows: Array<{ table: string, key: string | null, before: unknown, after: unknown }> } }> } };

export type LogPeopleQueryVariables = Exact<{ [key: string]: never; }>;


export type LogPeopleQuery = { people: Array<{ id: string, name: string }> };

export type LogToursQueryVariables = Exact<{ [key: string]: never; }>;


export type LogToursQuery = { tours: { edges: Array<{ node: { id: string, name: string } }> } };

export type LogActsQueryVariables = Exact<{
  item?: string | number | null | undefined;
  tour?: string | number | null | undefined;
  person?: string | number | null | undefined;
  day?: string | null | undefined;
  zone?: string | null | undefined;
  after?: string | null | undefined;
}>;


export type LogActsQuery = { logActs: { pageInfo: { hasNextPage: boolean, endCursor: string | null }, edges: Array<{ node: { id: string, lines: number, isMoreThanCounted: boolean, line: { id: string, at: string, doneAt: string | null, who: string, sentence: string, itemId: string | null, tourId: string | null, tourName: string | null, showId: string | null, moreRows: number, rows: Array<{ table: string, key: string | null, before: unknown, after: unknown }> } } }> } };

export type LogSealQueryVariables = Exact<{ [key: string]: never; }>;


export type LogSealQuery = { logSeal: { head: string, lines: number, sealedAt: string } | null };

export type BarredNowQueryVariables = Exact<{
  id: string | number;
}>;


export type BarredNowQuery = { plan: { flying: Array<{ hang: string, name: string, inCharge: string | null }>, barred: Array<{ itemId: string, reason: unknown, sentence: string, loads: Array<string>, hangs: Array<string> }>, doneAlthoughBarred: Array<{ id: string, tourId: string, what: string, hang: string | null, sentence: string, seen: string | null }> } };

export type ShowPageQueryVariables = Exact<{
  tourId: string | number;
  showId: string | number;
}>;


export type ShowPageQuery = { showPage: { tourId: string, showId: string, name: string, tourName: string, released: { id: string, state: string, revision: string | null, madeAt: string, madeBy: string, releasedAt: string | null, releasedBy: string | null, releasedDespite: string | null, hangs: Array<string>, trucks: Array<string>, changed: Array<{ code: string, sentence: string }>, show: { name: string, venue: string, from: string, to: string, number: number, of: number } } | null, draft: { id: string, state: string, revision: string | null, madeAt: string, madeBy: string, releasedAt: string | null, releasedBy: string | null, releasedDespite: string | null, hangs: Array<string>, trucks: Array<string>, changed: Array<{ code: string, sentence: string }>, show: { name: string, venue: string, from: string, to: string, number: number, of: number } } | null, revisions: Array<{ id: string, state: string, revision: string | null, releasedAt: string | null, releasedBy: string | null }> } };

export type PlanProgressQueryVariables = Exact<{
  id: string | number;
}>;


export type PlanProgressQuery = { plan: { ticks: Array<string>, tickRemarks: Array<{ what: string, remark: string, by: string }>, cartChecks: Array<{ load: string, checkedBy: string }> } };

export type PlanFindingsQueryVariables = Exact<{
  id: string | number;
}>;


export type PlanFindingsQuery = { plan: { findings: Array<{ code: string, weight: string, section: string, subject: string, date: string | null, sentence: string, fact: unknown }> } };

export type PlanCartsQueryVariables = Exact<{
  id: string | number;
}>;


export type PlanCartsQuery = { plan: { carts: CartsResult } };

export type PlanPicksQueryVariables = Exact<{
  id: string | number;
}>;


export type PlanPicksQuery = { plan: { picks: PicksHead } };

export type PlanHangQueryVariables = Exact<{
  id: string | number;
  hang: string;
}>;


export type PlanHangQuery = { plan: { hang: HangResult } };

export type PlanHardwareQueryVariables = Exact<{
  id: string | number;
}>;


export type PlanHardwareQuery = { plan: { hardware: HardwareResult } };

export type PlanTruckHeadQueryVariables = Exact<{
  id: string | number;
}>;


export type PlanTruckHeadQuery = { plan: { truckHead: TrucksHead } };

export type PlanTruckQueryVariables = Exact<{
  id: string | number;
  truck: string;
}>;


export type PlanTruckQuery = { plan: { truck: TruckResultOne } };

export type PlanDueQueryVariables = Exact<{
  id: string | number;
}>;


export type PlanDueQuery = { plan: { due: DueResult } };

export type WholePlanQueryVariables = Exact<{
  id: string | number;
}>;


export type WholePlanQuery = { plan: { plan: PackPlan } };

export type MakePackPlanMutationVariables = Exact<{
  tourId: string | number;
  showId: string | number;
}>;


export type MakePackPlanMutation = { makePackPlan:
    | { __typename: 'JobUnderWay', job: { id: string, state: string, progress: number } }
    | { __typename: 'PlanMade', planId: string }
    | { __typename: 'PlanningRefusal', code: string, sentence: string, reasons: Array<string> }
   };

export type ReleasePackPlanMutationVariables = Exact<{
  planId: string | number;
  despite?: string | null | undefined;
  countersign?: CountersignInput | null | undefined;
}>;


export type ReleasePackPlanMutation = { releasePackPlan:
    | { __typename: 'BookingRefusal', code: string, sentence: string, clashes: Array<{ item: string, from: string, to: string, tour: string }> }
    | { __typename: 'PlanView', id: string, revision: string | null }
    | { __typename: 'StaleRefusal', code: string, sentence: string, changed: Array<{ code: string, sentence: string }> }
    | { __typename: 'StopRefusal', code: string, sentence: string, needsOfficer: boolean, stops: Array<{ code: string, sentence: string }> }
   };

export type PlanDifferenceQueryVariables = Exact<{
  from: string | number;
  to: string | number;
}>;


export type PlanDifferenceQuery = { planDifference: { sentences: Array<string>, hangsChanged: Array<string>, boxes: Array<{ hang: string, position: number, from: string | null, to: string | null }> } };

export type TickMutationVariables = Exact<{
  planId: string | number;
  what: string;
  done: boolean;
  remark?: string | null | undefined;
}>;


export type TickMutation = { tick: { id: string } };

export type ConfirmCartMutationVariables = Exact<{
  planId: string | number;
  load: string;
  serials: Array<string> | string;
}>;


export type ConfirmCartMutation = { confirmCart: { agrees: boolean, slots: Array<{ slot: number, expected: string | null, found: string | null, agrees: boolean, code: string, sentence: string }>, barred: Array<{ itemId: string, sentence: string }> } };

export type SeeBarredActMutationVariables = Exact<{
  tourId: string | number;
  id: string | number;
  because: string;
}>;


export type SeeBarredActMutation = { seeBarredAct: boolean };

export type RecordExaminationMutationVariables = Exact<{
  itemId: string | number;
  examination: unknown;
  supersedes?: string | number | null | undefined;
  reason?: string | null | undefined;
}>;


export type RecordExaminationMutation = { recordExamination: { summary: { id: string, dueOn: string | null } } };

export type ExaminationRulesOnFileQueryVariables = Exact<{ [key: string]: never; }>;


export type ExaminationRulesOnFileQuery = { rules: unknown };

export type ItemRecordsQueryVariables = Exact<{
  id: string | number;
  after?: string | null | undefined;
}>;


export type ItemRecordsQuery = { item: { records: { pageInfo: { hasNextPage: boolean, endCursor: string | null }, edges: Array<{ node: { id: string, examination: unknown, recordedBy: string, recordedAt: string, supersededBy: string | null, supersedes: string | null, reason: string | null, kept: unknown, lines: unknown, file: { id: string, name: string, type: string, sizeBytes: number, sha256: string } | null } }> } } };

export type ItemHistoryQueryVariables = Exact<{
  id: string | number;
  after?: string | null | undefined;
}>;


export type ItemHistoryQuery = { item: { history: { pageInfo: { hasNextPage: boolean, endCursor: string | null }, edges: Array<{ node: { at: string, who: string, what: string, sentence: string } }> } } };

export type ItemPageQueryVariables = Exact<{
  id: string | number;
}>;


export type ItemPageQuery = { item: { item: Item, summary: { id: string, kind: string, model: string, state: string, depot: string, count: number | null, place: string, dueOn: string | null, dueState: string | null }, promises: Array<{ tour: string, from: string, to: string, count: number | null }> } };

export type QuarantineMutationVariables = Exact<{
  itemId: string | number;
  reason: string;
}>;


export type QuarantineMutation = { quarantine: { summary: { id: string, state: string } } };

export type ReleaseFromQuarantineMutationVariables = Exact<{
  itemId: string | number;
  reason: string;
}>;


export type ReleaseFromQuarantineMutation = { releaseFromQuarantine: { summary: { id: string, state: string } } };

export type RecordIncidentMutationVariables = Exact<{
  itemId: string | number;
  on: string;
  what: string;
}>;


export type RecordIncidentMutation = { recordIncident: { summary: { id: string } } };

export type ChangeItemsMutationVariables = Exact<{
  ids: Array<string | number> | string | number;
  cells: Array<CellInput> | CellInput;
  reason?: string | null | undefined;
}>;


export type ChangeItemsMutation = { changeItems:
    | { __typename: 'ManyChanged', changed: number, unchanged: number, waits: Array<{ id: string, sentence: string }> }
    | { __typename: 'ManyRefusal', refused: Array<{ id: string, column: string, value: string, wanted: string }> }
   };

export type ItemsQueryVariables = Exact<{
  search?: string | null | undefined;
  kind?: string | null | undefined;
  state?: string | null | undefined;
  model?: string | null | undefined;
  depot?: string | null | undefined;
  sort?: string | null | undefined;
  descending?: boolean | null | undefined;
  after?: string | null | undefined;
}>;


export type ItemsQuery = { items: { totalCount: number, isMoreThanCounted: boolean, pageInfo: { hasNextPage: boolean, endCursor: string | null }, edges: Array<{ node: { id: string, kind: string, model: string, state: string, depot: string, count: number | null, place: string, dueOn: string | null, dueState: string | null } }> } };

export type RegisterDepotsQueryVariables = Exact<{ [key: string]: never; }>;


export type RegisterDepotsQuery = { depots: Array<string> };

export type LotSplitsQueryVariables = Exact<{
  itemId: string | number;
}>;


export type LotSplitsQuery = { lotSplits: Array<{ parentId: string, childId: string, pieces: number, ofPieces: number, state: string, reason: string, madeBy: string, madeAt: string }> };

export type SplitLotMutationVariables = Exact<{
  itemId: string | number;
  pieces: number;
  state: string;
  reason: string;
}>;


export type SplitLotMutation = { splitLot: { taken: string, left: number } };

export type ModelsQueryVariables = Exact<{ [key: string]: never; }>;


export type ModelsQuery = { riggingSystems: Array<unknown>, rules: unknown, catalogueModels: Array<{ kind: string, model: string, itemCount: number, data: unknown }> };

export type CorrectSerialMutationVariables = Exact<{
  itemId: string | number;
  serial: string;
  reason: string;
}>;


export type CorrectSerialMutation = { correctSerial: { summary: { id: string } } };

export type SaveLoadRuleMutationVariables = Exact<{
  rule: unknown;
  was?: unknown;
  reason?: string | null | undefined;
}>;


export type SaveLoadRuleMutation = { saveLoadRule: Array<string> };

export type ApproveRiggingSystemMutationVariables = Exact<{
  id: string | number;
}>;


export type ApproveRiggingSystemMutation = { approveRiggingSystem: boolean };

export type SaveRiggingSystemMutationVariables = Exact<{
  system: unknown;
  was?: unknown;
}>;


export type SaveRiggingSystemMutation = { saveRiggingSystem: boolean };

export type WearRulesQueryVariables = Exact<{ [key: string]: never; }>;


export type WearRulesQuery = { rules: unknown };

export type AddExaminationRulesMutationVariables = Exact<{
  rules: Array<unknown> | unknown;
}>;


export type AddExaminationRulesMutation = { addExaminationRules: boolean };

export type RemoveExaminationRuleMutationVariables = Exact<{
  rule: unknown;
  reason: string;
}>;


export type RemoveExaminationRuleMutation = { removeExaminationRule: boolean };

export type ExaminationRuleEditionsQueryVariables = Exact<{ [key: string]: never; }>;


export type ExaminationRuleEditionsQuery = { examinationRuleEditions: Array<{ id: string, was: unknown, wanted: unknown, reason: string | null, madeBy: string, madeAt: string }> };

export type AddExaminationRuleMutationVariables = Exact<{
  rules: Array<unknown> | unknown;
}>;


export type AddExaminationRuleMutation = { addExaminationRules: boolean };

export type ChangeExaminationRuleMutationVariables = Exact<{
  was: unknown;
  rule: unknown;
  reason: string;
}>;


export type ChangeExaminationRuleMutation = { changeExaminationRule: boolean };

export type PlanImprovementQueryVariables = Exact<{
  planId: string | number;
}>;


export type PlanImprovementQuery = { planImprovement: { code: string, sentence: string } | null };

export type TakeImprovementMutationVariables = Exact<{
  planId: string | number;
}>;


export type TakeImprovementMutation = { takeImprovement:
    | { __typename: 'PlanMade', planId: string }
    | { __typename: 'StaleRefusal', sentence: string, changed: Array<{ sentence: string }> }
   };

export type LatestSearchQueryVariables = Exact<{
  tourId: string | number;
  showId: string | number;
}>;


export type LatestSearchQuery = { latestJob: { id: string, state: string, progress: number, sentence: string, askedBy: string } | null };

export type StartSearchMutationVariables = Exact<{
  tourId: string | number;
  showId: string | number;
}>;


export type StartSearchMutation = { startSearch: { id: string, state: string } };

export type StopSearchMutationVariables = Exact<{
  id: string | number;
}>;


export type StopSearchMutation = { cancelJob: { id: string, state: string } };

export type LatestMakingQueryVariables = Exact<{
  tourId: string | number;
  showId: string | number;
}>;


export type LatestMakingQuery = { latestJob: { id: string, state: string, progress: number, askedBy: string } | null };

export type StopMakingMutationVariables = Exact<{
  id: string | number;
}>;


export type StopMakingMutation = { cancelJob: { id: string, state: string } };

export type SwapBoxMutationVariables = Exact<{
  planId: string | number;
  serial: string;
  reason: string;
}>;


export type SwapBoxMutation = { swapBox:
    | { __typename: 'JobUnderWay', job: { id: string, state: string, progress: number } }
    | { __typename: 'PlanningRefusal', code: string, sentence: string, reasons: Array<string> }
    | { __typename: 'SwapResult', draftId: string, marked: Array<string>, difference: { sentences: Array<string> } }
   };

export type WhyHereQueryVariables = Exact<{
  id: string | number;
  load: string;
  slot?: number | null | undefined;
}>;


export type WhyHereQuery = { whyHere: { code: string, sentence: string } };

export type AttentionQueryVariables = Exact<{
  role: string;
  after?: string | null | undefined;
}>;


export type AttentionQuery = { attention: { totalCount: number, showCount: number, plannedCount: number, pageInfo: { hasNextPage: boolean, endCursor: string | null }, edges: Array<{ node: { weight: string, code: string, subject: string, date: string | null, sentence: string, tourId: string, showId: string, show: string, itemId: string | null } }> } };

export type AnyTourQueryVariables = Exact<{ [key: string]: never; }>;


export type AnyTourQuery = { tours: { edges: Array<{ node: { id: string } }> }, items: { edges: Array<{ node: { id: string } }> } };

export type BetweenShowsQueryVariables = Exact<{
  tourId: string | number;
}>;


export type BetweenShowsQuery = { betweenShows: Array<{ from: string, to: string, what: BetweenShows }> };

export type TourQueryVariables = Exact<{
  id: string | number;
}>;


export type TourQuery = { tour: { id: string, version: number, tour: Tour, removedShows: Array<{ showId: string, name: string, from: string, to: string, removedOn: string, removedBy: string | null, revisions: Array<string> }> }, showStates: Array<{ showId: string, state: string, revision: string | null, stops: number, looks: number }> };

export type SaveTourMutationVariables = Exact<{
  tour: Tour;
  expectedVersion?: number | null | undefined;
}>;


export type SaveTourMutation = { saveTour: { id: string, version: number, tour: Tour } };

export type HouseRulesQueryVariables = Exact<{ [key: string]: never; }>;


export type HouseRulesQuery = { rules: unknown, items: { edges: Array<{ node: { id: string, model: string, depot: string } }> } };

export type ToursQueryVariables = Exact<{
  after?: string | null | undefined;
}>;


export type ToursQuery = { tours: { pageInfo: { hasNextPage: boolean, endCursor: string | null }, edges: Array<{ node: { id: string, name: string, prepFrom: string, returnTo: string, shows: number } }> } };

export type TakenAlongQueryVariables = Exact<{
  tourId: string | number;
  showId?: string | number | null | undefined;
}>;


export type TakenAlongQuery = { takenAlong: { shows: number, hangs: number, boxes: number, drafts: number, inForce: Array<string>, revisions: number, givenBack: number } };

export type RemoveShowMutationVariables = Exact<{
  tourId: string | number;
  showId: string | number;
  expectedVersion: number;
}>;


export type RemoveShowMutation = { removeShow: { id: string, version: number } };

export type PutShowBackMutationVariables = Exact<{
  tourId: string | number;
  showId: string | number;
  expectedVersion: number;
}>;


export type PutShowBackMutation = { putShowBack: { id: string, version: number } };

export type RemoveTourMutationVariables = Exact<{
  tourId: string | number;
  expectedVersion: number;
}>;


export type RemoveTourMutation = { removeTour: { id: string, version: number } };

export type PutTourBackMutationVariables = Exact<{
  tourId: string | number;
  expectedVersion: number;
}>;


export type PutTourBackMutation = { putTourBack: { id: string, version: number } };

export type RemovedToursQueryVariables = Exact<{ [key: string]: never; }>;


export type RemovedToursQuery = { removedTours: Array<{ id: string, name: string, prepFrom: string, returnTo: string, version: number, removedOn: string, removedBy: string | null, revisions: number }> };

export type ChooseVenueMutationVariables = Exact<{
  tourId: string | number;
  showId: string | number;
  venueId?: string | number | null | undefined;
}>;


export type ChooseVenueMutation = { chooseVenue: boolean };

export type ShowVenueQueryVariables = Exact<{
  tourId: string | number;
  showId: string | number;
}>;


export type ShowVenueQuery = { venues: Array<{ id: string, venue: Venue }>, venueOfShow: { id: string } | null };

export type HardwareModelsQueryVariables = Exact<{ [key: string]: never; }>;


export type HardwareModelsQuery = { catalogueModels: Array<{ kind: string, model: string }> };

export type TravellingKitQueryVariables = Exact<{ [key: string]: never; }>;


export type TravellingKitQuery = { trucks: { edges: Array<{ node: { id: string, model: string } }> }, cases: { edges: Array<{ node: { id: string, model: string } }> } };

export type TourPlacesQueryVariables = Exact<{
  tourId: string | number;
}>;


export type TourPlacesQuery = { tourPlaces: { ruled: Array<string>, home: string | null, places: Array<{ place: string, hasRules: boolean, judgedBy: string | null, decisions: Array<{ rulesOf: string | null, because: string, decidedBy: string, decidedAt: string }> }> } };

export type AnswerPlaceMutationVariables = Exact<{
  tourId: string | number;
  place: string;
  rulesOf?: string | null | undefined;
  reason: string;
}>;


export type AnswerPlaceMutation = { answerPlace: { home: string | null } };

export type WholeTourQueryVariables = Exact<{
  tourId: string | number;
}>;


export type WholeTourQuery = { wholeTour: { plan: WholeTour, madeAt: string, madeBy: string | null } | null };

export type PlanWholeTourMutationVariables = Exact<{
  tourId: string | number;
  depot: number;
  dock: number;
  fixedUntil: number;
}>;


export type PlanWholeTourMutation = { planWholeTour:
    | { __typename: 'JobUnderWay', job: { id: string, state: string, progress: number } }
    | { __typename: 'PlanningRefusal', code: string, sentence: string, reasons: Array<string> }
    | { __typename: 'TourPlanned', tourId: string }
   };

export type CsvImportQueryVariables = Exact<{
  id: string | number;
}>;


export type CsvImportQuery = { csvImport: { id: string, of: string, dryRun: boolean, askedBy: string, askedAt: unknown, state: string, step: string, rowsTotal: number, rowsChecked: number, rowsWritten: number, rowsDated: number, seconds: number, code: string | null, outcome: { rows: number, added: number, changed: number, unchanged: number, failed: number | null, waiting: number, faulty: number, firstAdded: Array<string>, firstFailed: Array<string> | null, firstWaiting: Array<string>, firstChanged: Array<{ id: string, what: string }>, faults: Array<{ column: string, wanted: string, count: number, rows: Array<number> | null, first: Array<{ row: number, value: string }> }> } | null } };

export type LatestCsvImportsQueryVariables = Exact<{ [key: string]: never; }>;


export type LatestCsvImportsQuery = { latestCsvImports: Array<{ id: string, of: string, dryRun: boolean, askedBy: string, askedAt: unknown, state: string, rowsTotal: number, seconds: number }> };

export type CancelCsvImportMutationVariables = Exact<{
  id: string | number;
}>;


export type CancelCsvImportMutation = { cancelCsvImport: { id: string, state: string } };

export type KeepRowMutationVariables = Exact<{
  planId: string | number;
  truck: string;
  row: number;
}>;


export type KeepRowMutation = { keepRow:
    | { __typename: 'JobUnderWay', job: { id: string, state: string, progress: number } }
    | { __typename: 'LoadingDone', draftId: string, changes: Array<string> }
    | { __typename: 'PlanningRefusal', code: string, sentence: string, reasons: Array<string> }
   };

export type KeepLoadedMutationVariables = Exact<{
  planId: string | number;
}>;


export type KeepLoadedMutation = { keepLoaded:
    | { __typename: 'JobUnderWay', job: { id: string, state: string, progress: number } }
    | { __typename: 'LoadingDone', draftId: string, changes: Array<string> }
    | { __typename: 'PlanningRefusal', code: string, sentence: string, reasons: Array<string> }
   };

export type KeepPiecesMutationVariables = Exact<{
  planId: string | number;
  pieces: Array<string> | string;
}>;


export type KeepPiecesMutation = { keepPieces:
    | { __typename: 'JobUnderWay', job: { id: string, state: string, progress: number } }
    | { __typename: 'LoadingDone', draftId: string, changes: Array<string> }
    | { __typename: 'PlanningRefusal', code: string, sentence: string, reasons: Array<string> }
   };

export type LetPiecesGoMutationVariables = Exact<{
  planId: string | number;
  pieces?: Array<string> | string | null | undefined;
}>;


export type LetPiecesGoMutation = { letPiecesGo:
    | { __typename: 'JobUnderWay', job: { id: string, state: string, progress: number } }
    | { __typename: 'LoadingDone', draftId: string, changes: Array<string> }
    | { __typename: 'PlanningRefusal', code: string, sentence: string, reasons: Array<string> }
   };

export type WaiveOrderMutationVariables = Exact<{
  planId: string | number;
  piece: string;
  reason: string;
}>;


export type WaiveOrderMutation = { waiveOrder:
    | { __typename: 'JobUnderWay', job: { id: string, state: string, progress: number } }
    | { __typename: 'LoadingDone', draftId: string, changes: Array<string> }
    | { __typename: 'PlanningRefusal', code: string, sentence: string, reasons: Array<string> }
   };

export type EndWaiverMutationVariables = Exact<{
  planId: string | number;
  piece: string;
}>;


export type EndWaiverMutation = { endWaiver:
    | { __typename: 'JobUnderWay', job: { id: string, state: string, progress: number } }
    | { __typename: 'LoadingDone', draftId: string, changes: Array<string> }
    | { __typename: 'PlanningRefusal', code: string, sentence: string, reasons: Array<string> }
   };

export type TakeCaseMutationVariables = Exact<{
  planId: string | number;
  case: string;
}>;


export type TakeCaseMutation = { takeCase:
    | { __typename: 'JobUnderWay', job: { id: string, state: string, progress: number } }
    | { __typename: 'LoadingDone', draftId: string, changes: Array<string> }
    | { __typename: 'PlanningRefusal', code: string, sentence: string, reasons: Array<string> }
   };

export type LeaveCaseMutationVariables = Exact<{
  planId: string | number;
  case: string;
}>;


export type LeaveCaseMutation = { leaveCase:
    | { __typename: 'JobUnderWay', job: { id: string, state: string, progress: number } }
    | { __typename: 'LoadingDone', draftId: string, changes: Array<string> }
    | { __typename: 'PlanningRefusal', code: string, sentence: string, reasons: Array<string> }
   };

export type SetGroupEndMutationVariables = Exact<{
  planId: string | number;
  group: string;
  end?: string | null | undefined;
}>;


export type SetGroupEndMutation = { setGroupEnd:
    | { __typename: 'JobUnderWay', job: { id: string, state: string, progress: number } }
    | { __typename: 'LoadingDone', draftId: string, changes: Array<string> }
    | { __typename: 'PlanningRefusal', code: string, sentence: string, reasons: Array<string> }
   };

export type RowSwapQueryVariables = Exact<{
  planId: string | number;
  truck: string;
  first: number;
  second: number;
}>;


export type RowSwapQuery = { rowSwap: { first: number, second: number, sideBeforeMm: number, sideAfterMm: number, axles: Array<{ axle: string, beforeKg: number, afterKg: number, limitKg: number | null }>, breaches: Array<{ piece: string, mayBeWaived: boolean, sentence: string }> } };

export type SwapRowsMutationVariables = Exact<{
  planId: string | number;
  truck: string;
  first: number;
  second: number;
  reason?: string | null | undefined;
}>;


export type SwapRowsMutation = { swapRows:
    | { __typename: 'JobUnderWay', job: { id: string, state: string, progress: number } }
    | { __typename: 'LoadingDone', draftId: string, changes: Array<string> }
    | { __typename: 'PlanningRefusal', code: string, sentence: string, reasons: Array<string> }
   };

export type TakePieceAlongMutationVariables = Exact<{
  planId: string | number;
  piece: string;
}>;


export type TakePieceAlongMutation = { takePieceAlong:
    | { __typename: 'JobUnderWay', job: { id: string, state: string, progress: number } }
    | { __typename: 'LoadingDone', draftId: string, changes: Array<string> }
    | { __typename: 'PlanningRefusal', code: string, sentence: string, reasons: Array<string> }
   };

export type LeavePieceMutationVariables = Exact<{
  planId: string | number;
  piece: string;
  reason: string;
}>;


export type LeavePieceMutation = { leavePiece:
    | { __typename: 'JobUnderWay', job: { id: string, state: string, progress: number } }
    | { __typename: 'LoadingDone', draftId: string, changes: Array<string> }
    | { __typename: 'PlanningRefusal', code: string, sentence: string, reasons: Array<string> }
   };

export type VenuesQueryVariables = Exact<{ [key: string]: never; }>;


export type VenuesQuery = { venues: Array<{ id: string, version: number, venue: Venue, shows: Array<{ tourId: string, showId: string }> }> };

export type SaveVenueMutationVariables = Exact<{
  id?: string | number | null | undefined;
  venue: Venue;
  expectedVersion?: number | null | undefined;
}>;


export type SaveVenueMutation = { saveVenue: { id: string } };

export type VisitsQueryVariables = Exact<{
  from: string;
  to: string;
  depot?: string | null | undefined;
}>;


export type VisitsQuery = { depots: Array<string>, visits: Array<{ id: string, onDay: string, depot: string | null, placeName: string, state: string, remark: string | null, entered: number, version: number, list: SeenItems | null }>, showsInSeason: Array<{ tourId: string, showId: string, name: string, from: string, to: string }> };

export type VisitSeasonQueryVariables = Exact<{
  from: string;
  to: string;
  depot?: string | null | undefined;
  withIdle: boolean;
  without: Array<string | number> | string | number;
  check?: string | null | undefined;
}>;


export type VisitSeasonQuery = { visitSeason: { answer: SeasonAnswer, without: SeasonAnswer | null, names: Array<{ id: string, kind: string, model: string }> } };

export type CountedUseQueryVariables = Exact<{
  depot?: string | null | undefined;
}>;


export type CountedUseQuery = { countedUse: Array<{ itemId: string, kind: string, model: string, depot: string, jurisdiction: string, basis: string, every: number, since: string | null, count: number | null, isDue: boolean }> };

export type AddVisitDaysMutationVariables = Exact<{
  days: Array<PossibleDayInput> | PossibleDayInput;
}>;


export type AddVisitDaysMutation = { addVisitDays: number };

export type AgreeVisitsMutationVariables = Exact<{
  from: string;
  to: string;
  depot?: string | null | undefined;
  visits: Array<string | number> | string | number;
}>;


export type AgreeVisitsMutation = { agreeVisits: number };

export type MoveVisitMutationVariables = Exact<{
  id: string | number;
  onDay: string;
  expectedVersion: number;
}>;


export type MoveVisitMutation = { moveVisit: boolean };

export type CancelVisitMutationVariables = Exact<{
  id: string | number;
  expectedVersion: number;
}>;


export type CancelVisitMutation = { cancelVisit: boolean };

export type VisitListQueryVariables = Exact<{
  id: string | number;
}>;


export type VisitListQuery = { visitList: { visit: { id: string, onDay: string, placeName: string, state: string, list: SeenItems | null, entered: number, version: number }, items: Array<{ id: string, kind: string, model: string, place: string, intervals: Array<string>, rules: Array<string> }>, lines: Array<{ itemId: string, examinationId: string, outcome: string, report: string | null, remark: string | null }> } };

export type EnterVisitResultsMutationVariables = Exact<{
  id: string | number;
  examiner: string;
  reportFile?: string | number | null | undefined;
  lines: Array<VisitResultInput> | VisitResultInput;
}>;


export type EnterVisitResultsMutation = { enterVisitResults: { visit: { entered: number } } };

export type OwnCalendarsQueryVariables = Exact<{ [key: string]: never; }>;


export type OwnCalendarsQuery = { ownCalendars: Array<{ id: string, depot: string | null, madeAt: string }> };

export type RenewCalendarMutationVariables = Exact<{
  depot?: string | null | undefined;
}>;


export type RenewCalendarMutation = { renewCalendar: string };

export type WithdrawCalendarMutationVariables = Exact<{
  id: string | number;
}>;


export type WithdrawCalendarMutation = { withdrawCalendar: boolean };

export type MeQueryVariables = Exact<{ [key: string]: never; }>;


export type MeQuery = { me: { id: string, name: string, role: string, mustChange: boolean, deputyships: Array<{ officer: string, until: string, depot: string | null, tourId: string | null }>, onePerson: Array<{ since: string, until: string | null, by: string, reason: string, endedBecause: string | null }> } | null };

export type JobStateQueryVariables = Exact<{
  id: string | number;
}>;


export type JobStateQuery = { job: { id: string, state: string, progress: number } };

export type CancelJobMutationVariables = Exact<{
  id: string | number;
}>;


export type CancelJobMutation = { cancelJob: { id: string, state: string, progress: number } };

export type RuledPlacesQueryVariables = Exact<{ [key: string]: never; }>;


export type RuledPlacesQuery = { rules: unknown };

export class TypedDocumentString<TResult, TVariables>
  extends String
  implements DocumentTypeDecoration<TResult, TVariables>
{
  __apiType?: NonNullable<DocumentTypeDecoration<TResult, TVariables>['__apiType']>;
  private value: string;
  public __meta__?: Record<string, any> | undefined;

  constructor(value: string, __meta__?: Record<string, any> | undefined) {
    super(value);
    this.value = value;
    this.__meta__ = __meta__;
  }

  override toString(): string & DocumentTypeDecoration<TResult, TVariables> {
    return this.value;
  }
}

export const SignOutDocument = new TypedDocumentString(`
    mutation SignOut {
  signOut
}
    `, {"hash":"sha256:39300be1f6ff47633a8c264de2a924d5b71367b646d3bf86d82d7c51c6543956"}) as unknown as TypedDocumentString<SignOutMutation, SignOutMutationVariables>;
export const DeputiesDocument = new TypedDocumentString(`
    query Deputies {
  deputies {
    id
    personId
    person
    officerId
    officer
    from
    until
    depot
    tour
    reason
    namedBy
    state
  }
  people {
    id
    name
    role
    state
    passwordByOfficer
  }
  tours(first: 100) {
    edges {
      node {
        id
        name
      }
    }
  }
}
    `, {"hash":"sha256:3ea48a20707bcca15d4025168e0c2192b58af8c8f9f31614f5a0b36f0b845845"}) as unknown as TypedDocumentString<DeputiesQuery, DeputiesQueryVariables>;
export const NameDeputyDocument = new TypedDocumentString(`
    mutation NameDeputy($deputy: DeputyInput!) {
  nameDeputy(deputy: $deputy)
}
    `, {"hash":"sha256:d7b3b55787de117ad1a5f37a479e08e56fb331918b0deb347f6e9203f1d21ec7"}) as unknown as TypedDocumentString<NameDeputyMutation, NameDeputyMutationVariables>;
export const SignDeputyDocument = new TypedDocumentString(`
    mutation SignDeputy($id: ID!) {
  signDeputy(id: $id)
}
    `, {"hash":"sha256:528d2d87db7178cb915d471f35a0a66bd8fafe3fe74cdd7d7d1e42e66a54dc52"}) as unknown as TypedDocumentString<SignDeputyMutation, SignDeputyMutationVariables>;
export const WithdrawDeputyDocument = new TypedDocumentString(`
    mutation WithdrawDeputy($id: ID!) {
  withdrawDeputy(id: $id)
}
    `, {"hash":"sha256:c9a32e7fa2d8ac458eaa40d6af3c5d7a7bf5ea44342be502b1f75a10c1c7a69d"}) as unknown as TypedDocumentString<WithdrawDeputyMutation, WithdrawDeputyMutationVariables>;
export const SetOnePersonDocument = new TypedDocumentString(`
    mutation SetOnePerson($isOn: Boolean!, $reason: String!) {
  setOnePerson(isOn: $isOn, reason: $reason)
}
    `, {"hash":"sha256:2b4c295ef374434ff526084b294f022a485c5154b2a0945eb148f5c78be11086"}) as unknown as TypedDocumentString<SetOnePersonMutation, SetOnePersonMutationVariables>;
export const PeopleDocument = new TypedDocumentString(`
    query People {
  people {
    id
    name
    email
    role
    state
    sessions
    proposedBy
  }
}
    `, {"hash":"sha256:f477bac87163e09aa9b8d872f404a7d5776169f652d29b93b3af39acf610e7dc"}) as unknown as TypedDocumentString<PeopleQuery, PeopleQueryVariables>;
export const AddPersonDocument = new TypedDocumentString(`
    mutation AddPerson($person: PersonInput!) {
  addPerson(person: $person) {
    id
  }
}
    `, {"hash":"sha256:51ac2a85c37a7d0acaa707eb21d07bdf55ea1f95fa6cf032f70f7c23ccfcad25"}) as unknown as TypedDocumentString<AddPersonMutation, AddPersonMutationVariables>;
export const ChangePasswordDocument = new TypedDocumentString(`
    mutation ChangePassword($old: String!, $next: String!) {
  changePassword(old: $old, next: $next)
}
    `, {"hash":"sha256:eac8cbd84d579100261bed4458b0bd78a9c8bee0956c5a6b6121ceb4507b4fe4"}) as unknown as TypedDocumentString<ChangePasswordMutation, ChangePasswordMutationVariables>;
export const RenamePersonDocument = new TypedDocumentString(`
    mutation RenamePerson($id: ID!, $name: String!, $was: String) {
  renamePerson(id: $id, name: $name, was: $was) {
    id
    name
  }
}
    `, {"hash":"sha256:f7f82997cd90c770ca56e873c2bf5d3bc679cf288727abfda7885378cf544b9c"}) as unknown as TypedDocumentString<RenamePersonMutation, RenamePersonMutationVariables>;
export const RenewPasswordDocument = new TypedDocumentString(`
    mutation RenewPassword($id: ID!, $password: String!) {
  renewPassword(id: $id, password: $password)
}
    `, {"hash":"sha256:36d29b3ee920f4ccd394c961fd4dc15d28808b3b4dc3a1549eaf00e69d15989d"}) as unknown as TypedDocumentString<RenewPasswordMutation, RenewPasswordMutationVariables>;
export const DisablePersonDocument = new TypedDocumentString(`
    mutation DisablePerson($id: ID!) {
  disablePerson(id: $id)
}
    `, {"hash":"sha256:eb9432c935dfa6c5957cf5aa1e87e732f3ca3ad14848c27f91414b20963ab13c"}) as unknown as TypedDocumentString<DisablePersonMutation, DisablePersonMutationVariables>;
export const EnablePersonDocument = new TypedDocumentString(`
    mutation EnablePerson($id: ID!) {
  enablePerson(id: $id)
}
    `, {"hash":"sha256:282d6af438bba31fb9f788acb0bc3fcf101591ede3385e16416a74f1f3a15053"}) as unknown as TypedDocumentString<EnablePersonMutation, EnablePersonMutationVariables>;
export const ChangeRoleDocument = new TypedDocumentString(`
    mutation ChangeRole($id: ID!, $role: String!, $was: String) {
  changeRole(id: $id, role: $role, was: $was)
}
    `, {"hash":"sha256:4937c709c6b63a321480b3141ea787e816fc9c75353a1ebf8047451f8a3d349d"}) as unknown as TypedDocumentString<ChangeRoleMutation, ChangeRoleMutationVariables>;
export const ProposeOfficerDocument = new TypedDocumentString(`
    mutation ProposeOfficer($id: ID!) {
  proposeOfficer(id: $id)
}
    `, {"hash":"sha256:7003b4c1034684e7ae67eae5761be21005121330635fa8c114a47f409925981c"}) as unknown as TypedDocumentString<ProposeOfficerMutation, ProposeOfficerMutationVariables>;
export const AnswerProposalDocument = new TypedDocumentString(`
    mutation AnswerProposal($id: ID!, $accept: Boolean!, $password: String) {
  answerProposal(id: $id, accept: $accept, password: $password)
}
    `, {"hash":"sha256:d1766cf2dcc2b1d878cb136d2fb3b57f5374776f32091ab28bf016a6c4681a64"}) as unknown as TypedDocumentString<AnswerProposalMutation, AnswerProposalMutationVariables>;
export const RemovePersonDocument = new TypedDocumentString(`
    mutation RemovePerson($id: ID!) {
  removePerson(id: $id)
}
    `, {"hash":"sha256:9077e85caadadf2431b4777d2cb9769d367fffa05ac597fbdfa6e56999b60558"}) as unknown as TypedDocumentString<RemovePersonMutation, RemovePersonMutationVariables>;
export const SessionsDocument = new TypedDocumentString(`
    query Sessions {
  sessions {
    id
    openedAt
    seenAt
    address
    device
    isThis
  }
}
    `, {"hash":"sha256:b5909854e7dd79e7333749dc71bd50d65dbd1bc82c76e6841b25b5096a76b54b"}) as unknown as TypedDocumentString<SessionsQuery, SessionsQueryVariables>;
export const EndSessionsDocument = new TypedDocumentString(`
    mutation EndSessions($id: ID) {
  endSessions(id: $id)
}
    `, {"hash":"sha256:1c81fad18d0486bbb96e6b82241d69fea94227f3074a9f39eef6fdb3ae3aef4b"}) as unknown as TypedDocumentString<EndSessionsMutation, EndSessionsMutationVariables>;
export const SetUpDocument = new TypedDocumentString(`
    mutation SetUp($code: String!, $people: FirstPeopleInput!) {
  setUp(code: $code, people: $people)
}
    `, {"hash":"sha256:50c112989642d818ebad151e43eb9b23197e4992eb1ee688501e06b70db23ae2"}) as unknown as TypedDocumentString<SetUpMutation, SetUpMutationVariables>;
export const SignInDocument = new TypedDocumentString(`
    mutation SignIn($email: String!, $password: String!) {
  signIn(email: $email, password: $password) {
    __typename
    ... on Account {
      id
    }
    ... on SignInRefusal {
      sentence
    }
  }
}
    `, {"hash":"sha256:62414c1ad5074eb2c0d89abcdcafa41fd96b47fabb7939af78667755f55cbc2b"}) as unknown as TypedDocumentString<SignInMutation, SignInMutationVariables>;
export const ToSetUpDocument = new TypedDocumentString(`
    query ToSetUp {
  isToSetUp
}
    `, {"hash":"sha256:68315d7c7056b80aedac55cc10056dc47fe511577ac76bbc36e354a463bb4631"}) as unknown as TypedDocumentString<ToSetUpQuery, ToSetUpQueryVariables>;
export const FirstPasswordDocument = new TypedDocumentString(`
    mutation FirstPassword($next: String!) {
  changePassword(old: "", next: $next)
}
    `, {"hash":"sha256:90af7ace45e05c4807b2d80e78fcc9ea3cc31c0834f2c2a6c35ca09caf586834"}) as unknown as TypedDocumentString<FirstPasswordMutation, FirstPasswordMutationVariables>;
export const BeginningDocument = new TypedDocumentString(`
    query Beginning {
  beginningOfHouse {
    officers
    warehouse
    examinationRules
    loadRules
    systems
    approvedSystems
    models {
      kind
      count
    }
    items {
      kind
      count
    }
    waiting
    tours
    hangs
    plans
  }
}
    `, {"hash":"sha256:932aed9b141eeeb57572a4ef50ec016f807c015b3398c0b39094cb7f25835968"}) as unknown as TypedDocumentString<BeginningQuery, BeginningQueryVariables>;
export const DoMoveDocument = new TypedDocumentString(`
    mutation DoMove($planId: ID!, $box: String!, $from: String!, $to: String!) {
  doMove(planId: $planId, box: $box, from: $from, to: $to)
}
    `, {"hash":"sha256:27109c13e4003c663eda18d8a7584883abcf4e61c83e0ba168cdcbb39a1e3f34"}) as unknown as TypedDocumentString<DoMoveMutation, DoMoveMutationVariables>;
export const UndoMoveDocument = new TypedDocumentString(`
    mutation UndoMove($planId: ID!, $box: String!, $from: String!, $to: String!) {
  undoMove(planId: $planId, box: $box, from: $from, to: $to)
}
    `, {"hash":"sha256:578d32a728fffc68ebe2a4ad9f6a515527622bdda5867fb02ef7a542e45613b0"}) as unknown as TypedDocumentString<UndoMoveMutation, UndoMoveMutationVariables>;
export const WorkListDocument = new TypedDocumentString(`
    query WorkList($planId: ID!) {
  workList(planId: $planId)
}
    `, {"hash":"sha256:ab80f255593c6524a08b1700fa445d0c44e1e0262f210ab14b6b94e3bf0addab"}) as unknown as TypedDocumentString<WorkListQuery, WorkListQueryVariables>;
export const SetStackDocument = new TypedDocumentString(`
    mutation SetStack($cart: ID!, $serials: [String!]!) {
  setStack(cart: $cart, serials: $serials) {
    summary {
      id
    }
  }
}
    `, {"hash":"sha256:dabd24999ade6d376542885a1d517c431406d2f97af4dad25dbe4802c6087baf"}) as unknown as TypedDocumentString<SetStackMutation, SetStackMutationVariables>;
export const CountSheetDocument = new TypedDocumentString(`
    query CountSheet($tourId: ID!, $showId: ID!) {
  countSheet(tourId: $tourId, showId: $showId) {
    tourId
    showId
    name
    tourName
    notCountedBefore {
      showId
      name
    }
    lines {
      key
      item
      fitted
      spares
      learned {
        priorMean
        losses
        uses
        posteriorMean
        sparesByPriorAlone
      }
      counted {
        id
        sent
        returned
        damaged
        losses
        countedBy
        countedAt
      }
    }
    records {
      id
      key
      shows
      sent
      returned
      damaged
      losses
      uses
      corrects
      reason
      countedBy
      countedAt
      inForce
    }
  }
}
    `, {"hash":"sha256:478e6a781a0135c422f8cb21969c0091fd98f1ab76aa2ca38894fc82a167aa57"}) as unknown as TypedDocumentString<CountSheetQuery, CountSheetQueryVariables>;
export const RecordCountsDocument = new TypedDocumentString(`
    mutation RecordCounts($tourId: ID!, $showIds: [ID!]!, $lines: [CountInput!]!) {
  recordCounts(tourId: $tourId, showIds: $showIds, lines: $lines) {
    __typename
    ... on CountSheet {
      showId
    }
    ... on CountRefusal {
      sentence
    }
  }
}
    `, {"hash":"sha256:36ed7032eda4ff89be04cb99d6bc7db460b0b7224294cd710080a77969d9e929"}) as unknown as TypedDocumentString<RecordCountsMutation, RecordCountsMutationVariables>;
export const CorrectCountDocument = new TypedDocumentString(`
    mutation CorrectCount($id: ID!, $sent: Int!, $returned: Int!, $damaged: Int!, $reason: String!) {
  correctCount(
    id: $id
    sent: $sent
    returned: $returned
    damaged: $damaged
    reason: $reason
  ) {
    showId
  }
}
    `, {"hash":"sha256:815d471aae26610fe69ce8f7c0169f78b848a8a7108232b39e43c526438bd268"}) as unknown as TypedDocumentString<CorrectCountMutation, CorrectCountMutationVariables>;
export const TakeCountBackDocument = new TypedDocumentString(`
    mutation TakeCountBack($id: ID!, $reason: String!) {
  takeCountBack(id: $id, reason: $reason) {
    showId
  }
}
    `, {"hash":"sha256:a760d567948a7ec21bd923601f0790b14a1fe36986d77a4600668b708c5d53dc"}) as unknown as TypedDocumentString<TakeCountBackMutation, TakeCountBackMutationVariables>;
export const DatesDocument = new TypedDocumentString(`
    query Dates($first: Int, $after: String, $depot: String, $tour: String, $kind: String, $days: Int) {
  examinedItems(
    first: $first
    after: $after
    depot: $depot
    tour: $tour
    kind: $kind
    days: $days
  ) {
    pageInfo {
      hasNextPage
      endCursor
    }
    edges {
      node {
        id
        kind
        model
        place
        dueOn
        dueState
        state
        count
      }
    }
  }
}
    `, {"hash":"sha256:1c76bdb66cd00946f2962936416a5f3278ec4bda346ff6e5d4982ce78113d730"}) as unknown as TypedDocumentString<DatesQuery, DatesQueryVariables>;
export const DatesChoicesDocument = new TypedDocumentString(`
    query DatesChoices {
  depots
  tours(first: 200) {
    edges {
      node {
        id
        name
      }
    }
  }
}
    `, {"hash":"sha256:0067485ee456dcfc0e9e03a0b5d2998870466f33d350ace1b7be08a65e692a7c"}) as unknown as TypedDocumentString<DatesChoicesQuery, DatesChoicesQueryVariables>;
export const ProposalsDocument = new TypedDocumentString(`
    query Proposals($after: String) {
  proposals(first: 50, after: $after) {
    totalCount
    newest
    holdsOwn
    pageInfo {
      hasNextPage
      endCursor
    }
    edges {
      node {
        id
        kind
        subject
        itemId
        sentence
        proposedBy
        proposedAt
        reason
        isOwn
        figures {
          name
          was
          wanted
        }
      }
    }
  }
}
    `, {"hash":"sha256:d3eaf507facfeb9ba5e8d08886c07f4820b0b88a3e3c1ec1a340f88ee62445f9"}) as unknown as TypedDocumentString<ProposalsQuery, ProposalsQueryVariables>;
export const HowManyWaitDocument = new TypedDocumentString(`
    query HowManyWait {
  proposals(first: 1) {
    totalCount
  }
}
    `, {"hash":"sha256:b9194e11d65c40238bf02f1462c96510481b2fae4b54f7c1aa046f5be12fda07"}) as unknown as TypedDocumentString<HowManyWaitQuery, HowManyWaitQueryVariables>;
export const WaitsOfItemDocument = new TypedDocumentString(`
    query WaitsOfItem($id: ID!) {
  proposalsOfItem(itemId: $id) {
    id
    kind
    subject
    sentence
    proposedBy
    figures {
      name
      was
      wanted
    }
  }
}
    `, {"hash":"sha256:56caee81555e25202749ebba8f1821ba112907a56463b469723be568dbb6b74c"}) as unknown as TypedDocumentString<WaitsOfItemQuery, WaitsOfItemQueryVariables>;
export const WaitsOfCatalogueDocument = new TypedDocumentString(`
    query WaitsOfCatalogue {
  proposalsOfCatalogue {
    id
    kind
    subject
    sentence
    proposedBy
    figures {
      name
      was
      wanted
    }
  }
}
    `, {"hash":"sha256:09c37341b7bc393ca2a8104b5fccac7ddf140a641ecd58d57b9569a928faf4a3"}) as unknown as TypedDocumentString<WaitsOfCatalogueQuery, WaitsOfCatalogueQueryVariables>;
export const AnswerProposalsDocument = new TypedDocumentString(`
    mutation AnswerProposals($ids: [ID!], $through: ID, $accept: Boolean!, $reason: String!) {
  answerProposals(ids: $ids, through: $through, accept: $accept, reason: $reason)
}
    `, {"hash":"sha256:d5d47d5a8d5ce37a78f3ffc08f170afd7549df973cc3c1e07f8257d8919e0c02"}) as unknown as TypedDocumentString<AnswerProposalsMutation, AnswerProposalsMutationVariables>;
export const AnswerAllProposalsDocument = new TypedDocumentString(`
    mutation AnswerAllProposals($through: ID!, $accept: Boolean!, $reason: String!) {
  answerAllProposals(through: $through, accept: $accept, reason: $reason) {
    id
  }
}
    `, {"hash":"sha256:fdeb487e6626a2216cebc7efc8296d9a93b0ec9d5131a5e4a2aadcbcb963e685"}) as unknown as TypedDocumentString<AnswerAllProposalsMutation, AnswerAllProposalsMutationVariables>;
export const ProposalAnsweringDocument = new TypedDocumentString(`
    query ProposalAnswering {
  latestProposalAnswering {
    id
    accept
    reason
    askedBy
    isGoing
    total
    answered
    looked
    leftBecause
    seconds
  }
}
    `, {"hash":"sha256:6b45a331343035867245baf1d510e16b912e3af5e0fa4d902344b0e810253e1b"}) as unknown as TypedDocumentString<ProposalAnsweringQuery, ProposalAnsweringQueryVariables>;
export const ShowsToServeDocument = new TypedDocumentString(`
    query ShowsToServe {
  tours(first: 100) {
    edges {
      node {
        id
        name
        showNames {
          showId
          name
        }
      }
    }
  }
}
    `, {"hash":"sha256:cf36d081c007d979c7211240951a65dba3e9e92b9e33ec474926180ef02103c2"}) as unknown as TypedDocumentString<ShowsToServeQuery, ShowsToServeQueryVariables>;
export const FirstDayForDocument = new TypedDocumentString(`
    query FirstDayFor($tourId: ID!, $showId: ID!, $from: String!, $days: Int!) {
  firstDayFor(tourId: $tourId, showId: $showId, from: $from, days: $days)
}
    `, {"hash":"sha256:be9c25588219a6460e1f20d50c59e9b5531fec7991598c246746dd571582feb5"}) as unknown as TypedDocumentString<FirstDayForQuery, FirstDayForQueryVariables>;
export const FleetCalendarDocument = new TypedDocumentString(`
    query FleetCalendar($from: String!, $days: Int!, $depot: String) {
  depots
  fleetCalendar(from: $from, days: $days, depot: $depot) {
    model
    count
    days {
      day
      free
      promised
      out
      short
    }
  }
}
    `, {"hash":"sha256:cf67da107fcdefc6c3d974b2efc7330515ca6859126c961eea0c35bae6fead19"}) as unknown as TypedDocumentString<FleetCalendarQuery, FleetCalendarQueryVariables>;
export const RemediesDocument = new TypedDocumentString(`
    query Remedies($model: String!, $day: String!, $depot: String) {
  remedies(model: $model, day: $day, depot: $depot) {
    serial
    kind
    sentence
  }
}
    `, {"hash":"sha256:16fb64103875deb4ad9f91f70aa98e0bc576622c66aed86d9a518718128188fa"}) as unknown as TypedDocumentString<RemediesQuery, RemediesQueryVariables>;
export const OpenHoldsDocument = new TypedDocumentString(`
    query OpenHolds {
  openHolds {
    id
    name
    from
    to
    until
    items
    barred
  }
}
    `, {"hash":"sha256:1884b6802a24578966a13a8e7b0ea43d2e9d445ba255cdb0b842d5a9151ed882"}) as unknown as TypedDocumentString<OpenHoldsQuery, OpenHoldsQueryVariables>;
export const PlaceHoldDocument = new TypedDocumentString(`
    mutation PlaceHold($hold: HoldInput!) {
  placeHold(hold: $hold) {
    __typename
    ... on Hold {
      id
    }
    ... on BookingRefusal {
      sentence
    }
  }
}
    `, {"hash":"sha256:e89ec08f20ede4491cd8fdc9dcf190f06a7489a66134e034b57e5d718e396d2c"}) as unknown as TypedDocumentString<PlaceHoldMutation, PlaceHoldMutationVariables>;
export const GiveHoldBackDocument = new TypedDocumentString(`
    mutation GiveHoldBack($id: ID!) {
  giveHoldBack(id: $id)
}
    `, {"hash":"sha256:9460f9d436f643d0deb842d927d835552966d93f8a4204cb71c037aaae970c19"}) as unknown as TypedDocumentString<GiveHoldBackMutation, GiveHoldBackMutationVariables>;
export const FaultSheetDocument = new TypedDocumentString(`
    query FaultSheet($itemId: ID!) {
  faultSheet(itemId: $itemId) {
    id
    kind
    model
    state
    count
    spare
    faults {
      kind
      what
      then
      pieces
      moment
      by
    }
    fliesIn {
      tourId
      showId
      show
      from
      load
      cart
    }
  }
}
    `, {"hash":"sha256:8761ba3c516a02ac279d235f325a6f1104f066c8ae7330f43f9e1eea0334cb51"}) as unknown as TypedDocumentString<FaultSheetQuery, FaultSheetQueryVariables>;
export const OpenFaultsDocument = new TypedDocumentString(`
    query OpenFaults($planId: ID!) {
  openFaults(planId: $planId) {
    item
    kind
    what
    then
    pieces
    moment
    by
  }
}
    `, {"hash":"sha256:8eb221389f59a22e6f6950570e632571fb7b3659a5bbdd1b82736d74c561fc01"}) as unknown as TypedDocumentString<OpenFaultsQuery, OpenFaultsQueryVariables>;
export const ReportFaultDocument = new TypedDocumentString(`
    mutation ReportFault($itemId: ID!, $kind: String!, $what: String!, $then: String!, $pieces: Int) {
  reportFault(
    itemId: $itemId
    kind: $kind
    what: $what
    then: $then
    pieces: $pieces
  ) {
    id
  }
}
    `, {"hash":"sha256:50556aaddf916639edcc20c2b192c9f855798f97e0a9f1af85c5e6fd725cc5fa"}) as unknown as TypedDocumentString<ReportFaultMutation, ReportFaultMutationVariables>;
export const FloorCodeDocument = new TypedDocumentString(`
    query FloorCode($planId: ID!, $code: String!) {
  floorCode(planId: $planId, code: $code) {
    id
    kind
    model
    count
    whyNot
    wantedSerials
  }
}
    `, {"hash":"sha256:9f0fdeeb38f6a0ee66cdadb2b7cfd3064a092f6cfcc842a0cea7a554cc622627"}) as unknown as TypedDocumentString<FloorCodeQuery, FloorCodeQueryVariables>;
export const PrepSheetDocument = new TypedDocumentString(`
    query PrepSheet($planId: ID!) {
  prepSheet(planId: $planId) {
    uses {
      id
      kind
      model
      count
      depot
      inside
    }
    records {
      item
      kind
      agrees
      data
      moment
      by
    }
  }
}
    `, {"hash":"sha256:20fe756420c00759488a39b2b7c4f6f2d59c73f7064435c16e9853fb88083e3c"}) as unknown as TypedDocumentString<PrepSheetQuery, PrepSheetQueryVariables>;
export const BenchTestDocument = new TypedDocumentString(`
    mutation BenchTest($planId: ID!, $itemId: ID!, $failed: [String!]!, $remark: String!) {
  benchTest(planId: $planId, itemId: $itemId, failed: $failed, remark: $remark)
}
    `, {"hash":"sha256:9c4cf2721f6444aa5cc8cc189aa0471159c979bcc82d0e8aad5b17faf4865429"}) as unknown as TypedDocumentString<BenchTestMutation, BenchTestMutationVariables>;
export const ReadSplaysDocument = new TypedDocumentString(`
    mutation ReadSplays($planId: ID!, $load: String!, $splays: [Float!]!) {
  readSplays(planId: $planId, load: $load, splays: $splays)
}
    `, {"hash":"sha256:e8972322d4a6fcdee7afa8c2d98fcde048fab5513830d0aa79c29f7e3fd4a3fe"}) as unknown as TypedDocumentString<ReadSplaysMutation, ReadSplaysMutationVariables>;
export const CountTrunkDocument = new TypedDocumentString(`
    mutation CountTrunk($planId: ID!, $trunk: ID!, $counts: [CountedInTrunk!]!) {
  countTrunk(planId: $planId, trunk: $trunk, counts: $counts)
}
    `, {"hash":"sha256:cdd02e54a6050852e62376f715feb2e4f2499dc664afab1b3105a7ab33d7573b"}) as unknown as TypedDocumentString<CountTrunkMutation, CountTrunkMutationVariables>;
export const ReturnSheetDocument = new TypedDocumentString(`
    query ReturnSheet($planId: ID!) {
  returnSheet(planId: $planId) {
    id
    kind
    model
    cart
    slot
    load
    back {
      moment
      by
    }
    seen {
      moment
      by
      with
      place
    }
  }
}
    `, {"hash":"sha256:bfac7486067906a0efb9d58757d4bc79dc2f684ff9d334e9e1698986dab62bee"}) as unknown as TypedDocumentString<ReturnSheetQuery, ReturnSheetQueryVariables>;
export const ReturnCartDocument = new TypedDocumentString(`
    mutation ReturnCart($planId: ID!, $cart: ID!, $serials: [ID!]!) {
  returnCart(planId: $planId, cart: $cart, serials: $serials) {
    id
  }
}
    `, {"hash":"sha256:f09b82eb14a65dbd0bf47d78bd88e6a167962bc6817b732a14893ca9ea6eac14"}) as unknown as TypedDocumentString<ReturnCartMutation, ReturnCartMutationVariables>;
export const ReturnItemsDocument = new TypedDocumentString(`
    mutation ReturnItems($planId: ID!, $items: [ID!]!) {
  returnItems(planId: $planId, items: $items) {
    id
  }
}
    `, {"hash":"sha256:2d6568cbb3ee0258f00529f533458f72f3183a9890e38ad199671699d6632e15"}) as unknown as TypedDocumentString<ReturnItemsMutation, ReturnItemsMutationVariables>;
export const HangModelsDocument = new TypedDocumentString(`
    query HangModels {
  catalogueModels {
    kind
    model
    data
  }
}
    `, {"hash":"sha256:7e014f0960d3b031887ee06be21203371419d4b6bc5b0d3feea0c7bb9b5670c9"}) as unknown as TypedDocumentString<HangModelsQuery, HangModelsQueryVariables>;
export const AddLoadReadingDocument = new TypedDocumentString(`
    mutation AddLoadReading($planId: ID!, $hang: String!, $hole: String!, $place: String!, $readingKg: Float!) {
  addLoadReading(
    planId: $planId
    hang: $hang
    hole: $hole
    place: $place
    readingKg: $readingKg
  ) {
    readings {
      id
    }
  }
}
    `, {"hash":"sha256:0d1173de3b89363f5be2c60daf68074f1f00f3cc5da957736be0744d56a49e4f"}) as unknown as TypedDocumentString<AddLoadReadingMutation, AddLoadReadingMutationVariables>;
export const RiggingRecordDocument = new TypedDocumentString(`
    query RiggingRecord($planId: ID!) {
  riggingRecord(planId: $planId) {
    readings {
      id
      hang
      hole
      place
      readingKg
      readAt
      readBy
      verdict
      sentence
    }
    signOffs {
      id
      hang
      kind
      name
      remark
      company
      role
      place
      signedAt
      signedBy
    }
  }
}
    `, {"hash":"sha256:64c56a0f6deb02ab4279c6a3625ac450888286a205065e9e673f9ad023bff482"}) as unknown as TypedDocumentString<RiggingRecordQuery, RiggingRecordQueryVariables>;
export const SignOffDocument = new TypedDocumentString(`
    mutation SignOff($planId: ID!, $hang: String!, $kind: String!, $name: String!, $remark: String!, $outside: OutsideInput) {
  signOff(
    planId: $planId
    hang: $hang
    kind: $kind
    name: $name
    remark: $remark
    outside: $outside
  ) {
    signOffs {
      id
    }
  }
}
    `, {"hash":"sha256:1a8c6ea955b7c59e5eaa3175aba53af8b343bdd763d40f2d883db04a0014710f"}) as unknown as TypedDocumentString<SignOffMutation, SignOffMutationVariables>;
export const HouseStateDocument = new TypedDocumentString(`
    query HouseState {
  houseState {
    version
    upSince
    databaseBytes
    tables {
      name
      bytes
      rows
      changedInMonth
      grownBytes
    }
    sizes {
      day
      bytes
    }
    grownSince
    connections
    connectionsLimit
    connectionsOfOne
    lastBackup
    jobsWaiting
    jobsRunning
    jobsFailed
    oldestWaits
    plans {
      kind
      count
      seconds
    }
    requests
    turnedAway
    faults
    eventLoopMs
    diskFreeBytes
    processes
  }
}
    `, {"hash":"sha256:c911255f5a9d978d840eabb6d3051355368cc157a4201e988edb6ecc23a0c195"}) as unknown as TypedDocumentString<HouseStateQuery, HouseStateQueryVariables>;
export const InspectedItemsDocument = new TypedDocumentString(`
    query InspectedItems($ids: [ID!], $kinds: [String!], $depots: [String!], $after: String) {
  inspectedItems(ids: $ids, kinds: $kinds, depots: $depots, after: $after) {
    items
    hasMore
  }
}
    `, {"hash":"sha256:d17b522a623a85f761212e5522775c1f45d9d94f0e40fd28f93debcdae60e4f9"}) as unknown as TypedDocumentString<InspectedItemsQuery, InspectedItemsQueryVariables>;
export const RulesAndSealDocument = new TypedDocumentString(`
    query RulesAndSeal {
  rules
  logSeal {
    head
    lines
    sealedAt
  }
}
    `, {"hash":"sha256:8f4e84d51dd2dbb117cff7de522e6714f410eb5566f3d77e596407306176a854"}) as unknown as TypedDocumentString<RulesAndSealQuery, RulesAndSealQueryVariables>;
export const SignOffsDocument = new TypedDocumentString(`
    query SignOffs($planId: ID!) {
  riggingRecord(planId: $planId) {
    signOffs {
      hang
      kind
      name
      remark
      company
      role
      place
      signedAt
      signedBy
    }
  }
}
    `, {"hash":"sha256:379c3237cb16f4f8e12ebe4369e2db32046a71a3c7a5c7c329b70ed6f26ceac2"}) as unknown as TypedDocumentString<SignOffsQuery, SignOffsQueryVariables>;
export const ReportOfItemDocument = new TypedDocumentString(`
    query ReportOfItem($id: ID!, $after: String) {
  item(id: $id) {
    records(first: 50, after: $after) {
      pageInfo {
        hasNextPage
        endCursor
      }
      edges {
        node {
          id
          examination
          recordedBy
          recordedAt
          reason
          file {
            name
            sha256
          }
          kept
          lines
        }
      }
    }
  }
}
    `, {"hash":"sha256:f0086dc625e5cf569d4e886c51a39e7b99bb7a85c2180d1565da1af7390fbfea"}) as unknown as TypedDocumentString<ReportOfItemQuery, ReportOfItemQueryVariables>;
export const LabelItemsDocument = new TypedDocumentString(`
    query LabelItems($search: String, $kind: String, $serials: [ID!], $after: String) {
  items(
    search: $search
    kind: $kind
    serials: $serials
    first: 200
    after: $after
  ) {
    totalCount
    isMoreThanCounted
    pageInfo {
      hasNextPage
      endCursor
    }
    edges {
      node {
        id
        kind
        model
      }
    }
  }
}
    `, {"hash":"sha256:7032afdeb732daef8af4d93b5c3d9cd66e5722c69929dc3f52cd375e0942e51a"}) as unknown as TypedDocumentString<LabelItemsQuery, LabelItemsQueryVariables>;
export const LentKitDocument = new TypedDocumentString(`
    query LentKit {
  lentKit {
    itemId
    kind
    model
    count
    depot
    owner
    lent
    barredBy
  }
}
    `, {"hash":"sha256:25bd9f537b71809c02d13f7aaf1e8ee28b68dc217b40d4dd5b42ff315dc9f64b"}) as unknown as TypedDocumentString<LentKitQuery, LentKitQueryVariables>;
export const TakeInLentKitDocument = new TypedDocumentString(`
    mutation TakeInLentKit($kit: LentKitInput!) {
  takeInLentKit(kit: $kit) {
    itemId
    waits
  }
}
    `, {"hash":"sha256:860b70f72849d6b21df5a5ab0a3381670a34af4ad6cabff136dde09cbc1840b8"}) as unknown as TypedDocumentString<TakeInLentKitMutation, TakeInLentKitMutationVariables>;
export const ClearLentPaperDocument = new TypedDocumentString(`
    mutation ClearLentPaper($itemId: ID!, $reason: String!) {
  clearLentPaper(itemId: $itemId, reason: $reason)
}
    `, {"hash":"sha256:1d95f68ea67b16ff16a93fb1fcc1827c1f7338c847aad98688aee54174512865"}) as unknown as TypedDocumentString<ClearLentPaperMutation, ClearLentPaperMutationVariables>;
export const GiveBackLentKitDocument = new TypedDocumentString(`
    mutation GiveBackLentKit($itemId: ID!, $on: String!, $condition: String!) {
  giveBackLentKit(itemId: $itemId, on: $on, condition: $condition)
}
    `, {"hash":"sha256:c6dbb41c2dd76ee8bf25fa9f4246f914be0d49bd8bc1dd295dd48f4ac78c40c0"}) as unknown as TypedDocumentString<GiveBackLentKitMutation, GiveBackLentKitMutationVariables>;
export const ModelsToTakeInDocument = new TypedDocumentString(`
    query ModelsToTakeIn {
  catalogueModels {
    kind
    model
  }
}
    `, {"hash":"sha256:97bef0f71482d5af4d7a425c20f112836a707e289fd5f12c995da07b7b65d426"}) as unknown as TypedDocumentString<ModelsToTakeInQuery, ModelsToTakeInQueryVariables>;
export const LogLinesDocument = new TypedDocumentString(`
    query LogLines($act: ID, $item: ID, $tour: ID, $person: ID, $day: String, $zone: String, $after: String) {
  log(
    act: $act
    item: $item
    tour: $tour
    person: $person
    day: $day
    zone: $zone
    first: 50
    after: $after
  ) {
    pageInfo {
      hasNextPage
      endCursor
    }
    edges {
      node {
        id
        sentence
        itemId
        tourId
        tourName
        showId
        moreRows
        rows {
          table
          key
          before
          after
        }
      }
    }
  }
}
    `, {"hash":"sha256:e06a1dfbd8e8798a4e657732c0bbdc44d7061492bbd82530df3e5f138016a8ff"}) as unknown as TypedDocumentString<LogLinesQuery, LogLinesQueryVariables>;
export const LogPeopleDocument = new TypedDocumentString(`
    query LogPeople {
  people {
    id
    name
  }
}
    `, {"hash":"sha256:e7f888a113ae25baa9b9839230dea7d633fae412027af38e0b97d95f37765f48"}) as unknown as TypedDocumentString<LogPeopleQuery, LogPeopleQueryVariables>;
export const LogToursDocument = new TypedDocumentString(`
    query LogTours {
  tours(first: 200) {
    edges {
      node {
        id
        name
      }
    }
  }
}
    `, {"hash":"sha256:10c68ae46dcfb1edd8bed74ed4d06ffd8289e3bf1e7e7c68e6089a0117f71050"}) as unknown as TypedDocumentString<LogToursQuery, LogToursQueryVariables>;
export const LogActsDocument = new TypedDocumentString(`
    query LogActs($item: ID, $tour: ID, $person: ID, $day: String, $zone: String, $after: String) {
  logActs(
    item: $item
    tour: $tour
    person: $person
    day: $day
    zone: $zone
    first: 40
    after: $after
  ) {
    pageInfo {
      hasNextPage
      endCursor
    }
    edges {
      node {
        id
        lines
        isMoreThanCounted
        line {
          id
          at
          doneAt
          who
          sentence
          itemId
          tourId
          tourName
          showId
          moreRows
          rows {
            table
            key
            before
            after
          }
        }
      }
    }
  }
}
    `, {"hash":"sha256:df68260e22c905f8506049a6b92741fcc96461292db69dc31c2c28d23e99fc89"}) as unknown as TypedDocumentString<LogActsQuery, LogActsQueryVariables>;
export const LogSealDocument = new TypedDocumentString(`
    query LogSeal {
  logSeal {
    head
    lines
    sealedAt
  }
}
    `, {"hash":"sha256:ed07d17656e93fc208ef7cd2a845e6c225d1ae5aea06aaa01cafc84240902ceb"}) as unknown as TypedDocumentString<LogSealQuery, LogSealQueryVariables>;
export const BarredNowDocument = new TypedDocumentString(`
    query BarredNow($id: ID!) {
  plan(id: $id) {
    flying {
      hang
      name
      inCharge
    }
    barred {
      itemId
      reason
      sentence
      loads
      hangs
    }
    doneAlthoughBarred {
      id
      tourId
      what
      hang
      sentence
      seen
    }
  }
}
    `, {"hash":"sha256:b92a3cefda601ce266da0222fb9a595297665cde925a754e36925d7a68aa2018"}) as unknown as TypedDocumentString<BarredNowQuery, BarredNowQueryVariables>;
export const ShowPageDocument = new TypedDocumentString(`
    query ShowPage($tourId: ID!, $showId: ID!) {
  showPage(tourId: $tourId, showId: $showId) {
    tourId
    showId
    name
    tourName
    released {
      id
      state
      revision
      madeAt
      madeBy
      releasedAt
      releasedBy
      releasedDespite
      changed {
        code
        sentence
      }
      hangs
      trucks
      show {
        name
        venue
        from
        to
        number
        of
      }
    }
    draft {
      id
      state
      revision
      madeAt
      madeBy
      releasedAt
      releasedBy
      releasedDespite
      changed {
        code
        sentence
      }
      hangs
      trucks
      show {
        name
        venue
        from
        to
        number
        of
      }
    }
    revisions {
      id
      state
      revision
      releasedAt
      releasedBy
    }
  }
}
    `, {"hash":"sha256:0bd38339d7e4cfa5e592cc3f6ce2a43c65f63f911b06b00a9a8604176e17f53c"}) as unknown as TypedDocumentString<ShowPageQuery, ShowPageQueryVariables>;
export const PlanProgressDocument = new TypedDocumentString(`
    query PlanProgress($id: ID!) {
  plan(id: $id) {
    ticks
    tickRemarks {
      what
      remark
      by
    }
    cartChecks {
      load
      checkedBy
    }
  }
}
    `, {"hash":"sha256:0d8ddef1588b3c263010435a88591e32c0eec22faeabc0fd9bf48e99f4d8c52e"}) as unknown as TypedDocumentString<PlanProgressQuery, PlanProgressQueryVariables>;
export const PlanFindingsDocument = new TypedDocumentString(`
    query PlanFindings($id: ID!) {
  plan(id: $id) {
    findings {
      code
      weight
      section
      subject
      date
      sentence
      fact
    }
  }
}
    `, {"hash":"sha256:792bbe693cbdda83038cb7ab084c50bdf834a1c70972e5800db2ae0f68fd221e"}) as unknown as TypedDocumentString<PlanFindingsQuery, PlanFindingsQueryVariables>;
export const PlanCartsDocument = new TypedDocumentString(`
    query PlanCarts($id: ID!) {
  plan(id: $id) {
    carts
  }
}
    `, {"hash":"sha256:3d42b5a6e7e349d574cd839032c7dbc6d1bd624235831f7a7148dece2026d1d0"}) as unknown as TypedDocumentString<PlanCartsQuery, PlanCartsQueryVariables>;
export const PlanPicksDocument = new TypedDocumentString(`
    query PlanPicks($id: ID!) {
  plan(id: $id) {
    picks
  }
}
    `, {"hash":"sha256:0e6d7182f5f486b6999aaadad3a2183e80f0c59e50d1c28724943a73758ef752"}) as unknown as TypedDocumentString<PlanPicksQuery, PlanPicksQueryVariables>;
export const PlanHangDocument = new TypedDocumentString(`
    query PlanHang($id: ID!, $hang: String!) {
  plan(id: $id) {
    hang(hang: $hang)
  }
}
    `, {"hash":"sha256:9a78020a980282c1353842f24e6690176d3e910ad1a8618801fcdccefb125582"}) as unknown as TypedDocumentString<PlanHangQuery, PlanHangQueryVariables>;
export const PlanHardwareDocument = new TypedDocumentString(`
    query PlanHardware($id: ID!) {
  plan(id: $id) {
    hardware
  }
}
    `, {"hash":"sha256:85c12e29f285d82a740f2a59d1c0be9b9058e7dc59bd01988da5812c0f522d1d"}) as unknown as TypedDocumentString<PlanHardwareQuery, PlanHardwareQueryVariables>;
export const PlanTruckHeadDocument = new TypedDocumentString(`
    query PlanTruckHead($id: ID!) {
  plan(id: $id) {
    truckHead
  }
}
    `, {"hash":"sha256:d0f3771b1d1ba12abebe4c6f51a9b8a66b7558571eb6421ebed2a609705e4c4e"}) as unknown as TypedDocumentString<PlanTruckHeadQuery, PlanTruckHeadQueryVariables>;
export const PlanTruckDocument = new TypedDocumentString(`
    query PlanTruck($id: ID!, $truck: String!) {
  plan(id: $id) {
    truck(truck: $truck)
  }
}
    `, {"hash":"sha256:2c34e954acb38532465ecd8c4dddb829784a8fa120432324d53f4af3a1672fed"}) as unknown as TypedDocumentString<PlanTruckQuery, PlanTruckQueryVariables>;
export const PlanDueDocument = new TypedDocumentString(`
    query PlanDue($id: ID!) {
  plan(id: $id) {
    due
  }
}
    `, {"hash":"sha256:b293e30295be71cf0fc254744c11a5663ac5be179c713dc09a30bedd87e73540"}) as unknown as TypedDocumentString<PlanDueQuery, PlanDueQueryVariables>;
export const WholePlanDocument = new TypedDocumentString(`
    query WholePlan($id: ID!) {
  plan(id: $id) {
    plan
  }
}
    `, {"hash":"sha256:1df863940a01bae19317515c84ccc95b70430eceadbc65d47815275477599769"}) as unknown as TypedDocumentString<WholePlanQuery, WholePlanQueryVariables>;
export const MakePackPlanDocument = new TypedDocumentString(`
    mutation MakePackPlan($tourId: ID!, $showId: ID!) {
  makePackPlan(tourId: $tourId, showId: $showId, waitMs: 800) {
    __typename
    ... on PlanMade {
      planId
    }
    ... on PlanningRefusal {
      code
      sentence
      reasons
    }
    ... on JobUnderWay {
      job {
        id
        state
        progress
      }
    }
  }
}
    `, {"hash":"sha256:40b71e5053ae1736087ef043c21dd3acb1741cb16e4cc917472d0a5695338fd4"}) as unknown as TypedDocumentString<MakePackPlanMutation, MakePackPlanMutationVariables>;
export const ReleasePackPlanDocument = new TypedDocumentString(`
    mutation ReleasePackPlan($planId: ID!, $despite: String, $countersign: CountersignInput) {
  releasePackPlan(planId: $planId, despite: $despite, countersign: $countersign) {
    __typename
    ... on PlanView {
      id
      revision
    }
    ... on BookingRefusal {
      code
      sentence
      clashes {
        item
        from
        to
        tour
      }
    }
    ... on StaleRefusal {
      code
      sentence
      changed {
        code
        sentence
      }
    }
    ... on StopRefusal {
      code
      sentence
      stops {
        code
        sentence
      }
      needsOfficer
    }
  }
}
    `, {"hash":"sha256:507d8bc0976ca21e6fef45390742bd45317ad85f3bbbd8357b0178822dcf790d"}) as unknown as TypedDocumentString<ReleasePackPlanMutation, ReleasePackPlanMutationVariables>;
export const PlanDifferenceDocument = new TypedDocumentString(`
    query PlanDifference($from: ID!, $to: ID!) {
  planDifference(from: $from, to: $to) {
    sentences
    hangsChanged
    boxes {
      hang
      position
      from
      to
    }
  }
}
    `, {"hash":"sha256:a475f181dbec80fdc605fea1316e842bdff1c1c5f0fd133253b41a030e31629a"}) as unknown as TypedDocumentString<PlanDifferenceQuery, PlanDifferenceQueryVariables>;
export const TickDocument = new TypedDocumentString(`
    mutation Tick($planId: ID!, $what: String!, $done: Boolean!, $remark: String) {
  tick(planId: $planId, what: $what, done: $done, remark: $remark) {
    id
  }
}
    `, {"hash":"sha256:41a01d7dc9b47443b8a9c07a6fdebc67993f67d3edcd0ccf8317357b151516fa"}) as unknown as TypedDocumentString<TickMutation, TickMutationVariables>;
export const ConfirmCartDocument = new TypedDocumentString(`
    mutation ConfirmCart($planId: ID!, $load: String!, $serials: [String!]!) {
  confirmCart(planId: $planId, load: $load, serials: $serials) {
    agrees
    slots {
      slot
      expected
      found
      agrees
      code
      sentence
    }
    barred {
      itemId
      sentence
    }
  }
}
    `, {"hash":"sha256:7c2b611e90cf1dbff37d1f90f73751995ed918d619b31f6934968b34fe583508"}) as unknown as TypedDocumentString<ConfirmCartMutation, ConfirmCartMutationVariables>;
export const SeeBarredActDocument = new TypedDocumentString(`
    mutation SeeBarredAct($tourId: ID!, $id: ID!, $because: String!) {
  seeBarredAct(tourId: $tourId, id: $id, because: $because)
}
    `, {"hash":"sha256:9c1f38f2625261bbc4863d7be76eba5bcae2f10de7781862c98a7bd7f2328111"}) as unknown as TypedDocumentString<SeeBarredActMutation, SeeBarredActMutationVariables>;
export const RecordExaminationDocument = new TypedDocumentString(`
    mutation RecordExamination($itemId: ID!, $examination: AnyJson!, $supersedes: ID, $reason: String) {
  recordExamination(
    itemId: $itemId
    examination: $examination
    supersedes: $supersedes
    reason: $reason
  ) {
    summary {
      id
      dueOn
    }
  }
}
    `, {"hash":"sha256:c6b3c49a8146fc613045b047c328b8c764cbd8b9af8bbcef92c8876f5a75df69"}) as unknown as TypedDocumentString<RecordExaminationMutation, RecordExaminationMutationVariables>;
export const ExaminationRulesOnFileDocument = new TypedDocumentString(`
    query ExaminationRulesOnFile {
  rules
}
    `, {"hash":"sha256:f873caa3162441edc93ca14f8ed3b8b9ba539e03ae8914bb1ec8ee81c9d976fd"}) as unknown as TypedDocumentString<ExaminationRulesOnFileQuery, ExaminationRulesOnFileQueryVariables>;
export const ItemRecordsDocument = new TypedDocumentString(`
    query ItemRecords($id: ID!, $after: String) {
  item(id: $id) {
    records(first: 20, after: $after) {
      pageInfo {
        hasNextPage
        endCursor
      }
      edges {
        node {
          id
          examination
          recordedBy
          recordedAt
          supersededBy
          supersedes
          reason
          file {
            id
            name
            type
            sizeBytes
            sha256
          }
          kept
          lines
        }
      }
    }
  }
}
    `, {"hash":"sha256:568c5dc257415f523cdc4cd0f06d92c4c380775d9d358f477993f7ed5b0ab039"}) as unknown as TypedDocumentString<ItemRecordsQuery, ItemRecordsQueryVariables>;
export const ItemHistoryDocument = new TypedDocumentString(`
    query ItemHistory($id: ID!, $after: String) {
  item(id: $id) {
    history(first: 20, after: $after) {
      pageInfo {
        hasNextPage
        endCursor
      }
      edges {
        node {
          at
          who
          what
          sentence
        }
      }
    }
  }
}
    `, {"hash":"sha256:29d9d66c08ae2188e158aabc81b43adf3c89fdac6a8cdcca59c54f843388b93c"}) as unknown as TypedDocumentString<ItemHistoryQuery, ItemHistoryQueryVariables>;
export const ItemPageDocument = new TypedDocumentString(`
    query ItemPage($id: ID!) {
  item(id: $id) {
    item
    summary {
      id
      kind
      model
      state
      depot
      count
      place
      dueOn
      dueState
    }
    promises {
      tour
      from
      to
      count
    }
  }
}
    `, {"hash":"sha256:42d0438e0e6f4b095b6f5aca4871e424c2aa88d6f3deb3cbbc74daf2c787b200"}) as unknown as TypedDocumentString<ItemPageQuery, ItemPageQueryVariables>;
export const QuarantineDocument = new TypedDocumentString(`
    mutation Quarantine($itemId: ID!, $reason: String!) {
  quarantine(itemId: $itemId, reason: $reason) {
    summary {
      id
      state
    }
  }
}
    `, {"hash":"sha256:1363815df604bf74303bc001daf5a27857157a21fe0dc4cdaae6e656c72ce6d0"}) as unknown as TypedDocumentString<QuarantineMutation, QuarantineMutationVariables>;
export const ReleaseFromQuarantineDocument = new TypedDocumentString(`
    mutation ReleaseFromQuarantine($itemId: ID!, $reason: String!) {
  releaseFromQuarantine(itemId: $itemId, reason: $reason) {
    summary {
      id
      state
    }
  }
}
    `, {"hash":"sha256:ab78289b7d5641db1ffee6c651c74ad68ee068348b662c140895a4cb246a9c9a"}) as unknown as TypedDocumentString<ReleaseFromQuarantineMutation, ReleaseFromQuarantineMutationVariables>;
export const RecordIncidentDocument = new TypedDocumentString(`
    mutation RecordIncident($itemId: ID!, $on: String!, $what: String!) {
  recordIncident(itemId: $itemId, on: $on, what: $what) {
    summary {
      id
    }
  }
}
    `, {"hash":"sha256:b8890e20d0a78f99f976fb8f1a96a386afec19576c667a945acd862bb9360ad4"}) as unknown as TypedDocumentString<RecordIncidentMutation, RecordIncidentMutationVariables>;
export const ChangeItemsDocument = new TypedDocumentString(`
    mutation ChangeItems($ids: [ID!]!, $cells: [CellInput!]!, $reason: String) {
  changeItems(ids: $ids, cells: $cells, reason: $reason) {
    __typename
    ... on ManyChanged {
      changed
      unchanged
      waits {
        id
        sentence
      }
    }
    ... on ManyRefusal {
      refused {
        id
        column
        value
        wanted
      }
    }
  }
}
    `, {"hash":"sha256:3f3dcc35ed12f2e5d01cf7f1955c24a063665ab8ad8b2ab67bc9e641809f9599"}) as unknown as TypedDocumentString<ChangeItemsMutation, ChangeItemsMutationVariables>;
export const ItemsDocument = new TypedDocumentString(`
    query Items($search: String, $kind: String, $state: String, $model: String, $depot: String, $sort: String, $descending: Boolean, $after: String) {
  items(
    search: $search
    kind: $kind
    state: $state
    model: $model
    depot: $depot
    sort: $sort
    descending: $descending
    first: 50
    after: $after
  ) {
    totalCount
    isMoreThanCounted
    pageInfo {
      hasNextPage
      endCursor
    }
    edges {
      node {
        id
        kind
        model
        state
        depot
        count
        place
        dueOn
        dueState
      }
    }
  }
}
    `, {"hash":"sha256:3b57412c95ab93890750c8a7b1c108020deb484744d3afbeef3a2bada690b198"}) as unknown as TypedDocumentString<ItemsQuery, ItemsQueryVariables>;
export const RegisterDepotsDocument = new TypedDocumentString(`
    query RegisterDepots {
  depots
}
    `, {"hash":"sha256:3fe92b88b5f53237098c80ddaa1a44b373faf5527ad4f000c50537c3f2efb225"}) as unknown as TypedDocumentString<RegisterDepotsQuery, RegisterDepotsQueryVariables>;
export const LotSplitsDocument = new TypedDocumentString(`
    query LotSplits($itemId: ID!) {
  lotSplits(itemId: $itemId) {
    parentId
    childId
    pieces
    ofPieces
    state
    reason
    madeBy
    madeAt
  }
}
    `, {"hash":"sha256:c8d6171d9e87e31391b334c2c032bb30b95a719902c7f70e63ba507b4bf0787c"}) as unknown as TypedDocumentString<LotSplitsQuery, LotSplitsQueryVariables>;
export const SplitLotDocument = new TypedDocumentString(`
    mutation SplitLot($itemId: ID!, $pieces: Int!, $state: String!, $reason: String!) {
  splitLot(itemId: $itemId, pieces: $pieces, state: $state, reason: $reason) {
    taken
    left
  }
}
    `, {"hash":"sha256:f35401ec765d248cb2b2893068418a1be95adeec4fb1524fd5644e7110ca30cf"}) as unknown as TypedDocumentString<SplitLotMutation, SplitLotMutationVariables>;
export const ModelsDocument = new TypedDocumentString(`
    query Models {
  catalogueModels {
    kind
    model
    itemCount
    data
  }
  riggingSystems
  rules
}
    `, {"hash":"sha256:346023f8d5cc789920d66caac3287ef64a47b958e8336bd3130769ba7beee4f5"}) as unknown as TypedDocumentString<ModelsQuery, ModelsQueryVariables>;
export const CorrectSerialDocument = new TypedDocumentString(`
    mutation CorrectSerial($itemId: ID!, $serial: String!, $reason: String!) {
  correctSerial(itemId: $itemId, serial: $serial, reason: $reason) {
    summary {
      id
    }
  }
}
    `, {"hash":"sha256:9daefed815ceb476cb09cec759bb6643143edabde2c83f9b5c51aa8bf3e39283"}) as unknown as TypedDocumentString<CorrectSerialMutation, CorrectSerialMutationVariables>;
export const SaveLoadRuleDocument = new TypedDocumentString(`
    mutation SaveLoadRule($rule: ModelJson!, $was: ModelJson, $reason: String) {
  saveLoadRule(rule: $rule, was: $was, reason: $reason)
}
    `, {"hash":"sha256:fdb0e6ffaecdc0d95405e07b2986f20c751410a09175407cbdb0f1cad66c9926"}) as unknown as TypedDocumentString<SaveLoadRuleMutation, SaveLoadRuleMutationVariables>;
export const ApproveRiggingSystemDocument = new TypedDocumentString(`
    mutation ApproveRiggingSystem($id: ID!) {
  approveRiggingSystem(id: $id)
}
    `, {"hash":"sha256:4cacaf84edf05d16afdd7fc4fa2730f49bd6755464c0f1327a879e0215ebfc5b"}) as unknown as TypedDocumentString<ApproveRiggingSystemMutation, ApproveRiggingSystemMutationVariables>;
export const SaveRiggingSystemDocument = new TypedDocumentString(`
    mutation SaveRiggingSystem($system: ModelJson!, $was: ModelJson) {
  saveRiggingSystem(system: $system, was: $was)
}
    `, {"hash":"sha256:eb5c8e57d3db7ad94806a054ef977ccdf1e2e0bd02191e850ad2ca123722882c"}) as unknown as TypedDocumentString<SaveRiggingSystemMutation, SaveRiggingSystemMutationVariables>;
export const WearRulesDocument = new TypedDocumentString(`
    query WearRules {
  rules
}
    `, {"hash":"sha256:bffd2f2e659706eb187da52e80fc5da40df2d4bb752641e6cdead3c8380edcac"}) as unknown as TypedDocumentString<WearRulesQuery, WearRulesQueryVariables>;
export const AddExaminationRulesDocument = new TypedDocumentString(`
    mutation AddExaminationRules($rules: [ModelJson!]!) {
  addExaminationRules(rules: $rules)
}
    `, {"hash":"sha256:469ff7238fcca1ce6f135e132fd07e2792dfaba44f8d71c5c0bc59f192aeba62"}) as unknown as TypedDocumentString<AddExaminationRulesMutation, AddExaminationRulesMutationVariables>;
export const RemoveExaminationRuleDocument = new TypedDocumentString(`
    mutation RemoveExaminationRule($rule: ModelJson!, $reason: String!) {
  removeExaminationRule(rule: $rule, reason: $reason)
}
    `, {"hash":"sha256:3be4b3f460fdfd3610f0a00ac626f399468b47e40a950294429761d1d986490d"}) as unknown as TypedDocumentString<RemoveExaminationRuleMutation, RemoveExaminationRuleMutationVariables>;
export const ExaminationRuleEditionsDocument = new TypedDocumentString(`
    query ExaminationRuleEditions {
  examinationRuleEditions {
    id
    was
    wanted
    reason
    madeBy
    madeAt
  }
}
    `, {"hash":"sha256:c52e25bb70462b8590f60a0af6e22f8052c1b58b13afc6fde73e89d02d803792"}) as unknown as TypedDocumentString<ExaminationRuleEditionsQuery, ExaminationRuleEditionsQueryVariables>;
export const AddExaminationRuleDocument = new TypedDocumentString(`
    mutation AddExaminationRule($rules: [ModelJson!]!) {
  addExaminationRules(rules: $rules)
}
    `, {"hash":"sha256:c8b57f86f930dcf481a75d23541381ece5b487d126eb8cd9307f173a39442444"}) as unknown as TypedDocumentString<AddExaminationRuleMutation, AddExaminationRuleMutationVariables>;
export const ChangeExaminationRuleDocument = new TypedDocumentString(`
    mutation ChangeExaminationRule($was: ModelJson!, $rule: ModelJson!, $reason: String!) {
  changeExaminationRule(was: $was, rule: $rule, reason: $reason)
}
    `, {"hash":"sha256:6cd666e4e2b1a9bab354c22b2dae874f3613dae53b5b0fd20c4ffa74d1e6e225"}) as unknown as TypedDocumentString<ChangeExaminationRuleMutation, ChangeExaminationRuleMutationVariables>;
export const PlanImprovementDocument = new TypedDocumentString(`
    query PlanImprovement($planId: ID!) {
  planImprovement(planId: $planId) {
    code
    sentence
  }
}
    `, {"hash":"sha256:7801d6561847b0d9cc84a0816bc9593d07f8be618b0e58377d624b65c858900b"}) as unknown as TypedDocumentString<PlanImprovementQuery, PlanImprovementQueryVariables>;
export const TakeImprovementDocument = new TypedDocumentString(`
    mutation TakeImprovement($planId: ID!) {
  takeImprovement(planId: $planId) {
    __typename
    ... on PlanMade {
      planId
    }
    ... on StaleRefusal {
      sentence
      changed {
        sentence
      }
    }
  }
}
    `, {"hash":"sha256:76584e61b1e665d86eb080bb927de4ea437112cf223da0e535a5dea4c483b061"}) as unknown as TypedDocumentString<TakeImprovementMutation, TakeImprovementMutationVariables>;
export const LatestSearchDocument = new TypedDocumentString(`
    query LatestSearch($tourId: ID!, $showId: ID!) {
  latestJob(kind: "search", tourId: $tourId, showId: $showId) {
    id
    state
    progress
    sentence
    askedBy
  }
}
    `, {"hash":"sha256:644f8198e71037974abece13d8b91c2b6d11df36ca731bc0ee49a236e863aa9d"}) as unknown as TypedDocumentString<LatestSearchQuery, LatestSearchQueryVariables>;
export const StartSearchDocument = new TypedDocumentString(`
    mutation StartSearch($tourId: ID!, $showId: ID!) {
  startSearch(tourId: $tourId, showId: $showId) {
    id
    state
  }
}
    `, {"hash":"sha256:54fd7141b1507a9cb9a1681744b80f39ee918725945c0b8576cdce1f971b7e45"}) as unknown as TypedDocumentString<StartSearchMutation, StartSearchMutationVariables>;
export const StopSearchDocument = new TypedDocumentString(`
    mutation StopSearch($id: ID!) {
  cancelJob(id: $id) {
    id
    state
  }
}
    `, {"hash":"sha256:226c4b4af30e52ecd9755f28ae0771c264f18b4af1d47908a0991392d7d139c5"}) as unknown as TypedDocumentString<StopSearchMutation, StopSearchMutationVariables>;
export const LatestMakingDocument = new TypedDocumentString(`
    query LatestMaking($tourId: ID!, $showId: ID!) {
  latestJob(kind: "make", tourId: $tourId, showId: $showId) {
    id
    state
    progress
    askedBy
  }
}
    `, {"hash":"sha256:e0ab6f8f23dfb05bb4cca7a98650a6de84bc0441021b7c57eb97ba99e4e08933"}) as unknown as TypedDocumentString<LatestMakingQuery, LatestMakingQueryVariables>;
export const StopMakingDocument = new TypedDocumentString(`
    mutation StopMaking($id: ID!) {
  cancelJob(id: $id) {
    id
    state
  }
}
    `, {"hash":"sha256:1cacc522c71f7daa25a9efc88104b6105c3e2ca379abde3f8b78e88ecd5a8eb2"}) as unknown as TypedDocumentString<StopMakingMutation, StopMakingMutationVariables>;
export const SwapBoxDocument = new TypedDocumentString(`
    mutation SwapBox($planId: ID!, $serial: String!, $reason: String!) {
  swapBox(planId: $planId, serial: $serial, reason: $reason, waitMs: 800) {
    __typename
    ... on SwapResult {
      draftId
      marked
      difference {
        sentences
      }
    }
    ... on PlanningRefusal {
      code
      sentence
      reasons
    }
    ... on JobUnderWay {
      job {
        id
        state
        progress
      }
    }
  }
}
    `, {"hash":"sha256:b90786034b5362960787a0cd599ca6bcd5cdc01b3168ca78f838705f5363466e"}) as unknown as TypedDocumentString<SwapBoxMutation, SwapBoxMutationVariables>;
export const WhyHereDocument = new TypedDocumentString(`
    query WhyHere($id: ID!, $load: String!, $slot: Int) {
  whyHere(planId: $id, load: $load, slot: $slot) {
    code
    sentence
  }
}
    `, {"hash":"sha256:3358d0b08eec17ac19433fdf502e85af5248891abe5968d8fdb8bc9b88623f9a"}) as unknown as TypedDocumentString<WhyHereQuery, WhyHereQueryVariables>;
export const AttentionDocument = new TypedDocumentString(`
    query Attention($role: String!, $after: String) {
  attention(role: $role, first: 30, after: $after) {
    totalCount
    showCount
    plannedCount
    pageInfo {
      hasNextPage
      endCursor
    }
    edges {
      node {
        weight
        code
        subject
        date
        sentence
        tourId
        showId
        show
        itemId
      }
    }
  }
}
    `, {"hash":"sha256:26385f9e8c25461faf7ab22f98323c3505fe00e0a10d8731c79faf54ea2768f9"}) as unknown as TypedDocumentString<AttentionQuery, AttentionQueryVariables>;
export const AnyTourDocument = new TypedDocumentString(`
    query AnyTour {
  tours(first: 1) {
    edges {
      node {
        id
      }
    }
  }
  items(first: 1) {
    edges {
      node {
        id
      }
    }
  }
}
    `, {"hash":"sha256:bb6e11666baba833c6ac38ea88887c9df11dce632c3eb17b4af43482d9cdd38c"}) as unknown as TypedDocumentString<AnyTourQuery, AnyTourQueryVariables>;
export const BetweenShowsDocument = new TypedDocumentString(`
    query BetweenShows($tourId: ID!) {
  betweenShows(tourId: $tourId) {
    from
    to
    what
  }
}
    `, {"hash":"sha256:1d2353fa0428e59843bc2ab20e48b1f78965f94ae63e557f98e0996bf9ad5ec3"}) as unknown as TypedDocumentString<BetweenShowsQuery, BetweenShowsQueryVariables>;
export const TourDocument = new TypedDocumentString(`
    query Tour($id: ID!) {
  tour(id: $id) {
    id
    version
    tour
    removedShows {
      showId
      name
      from
      to
      removedOn
      removedBy
      revisions
    }
  }
  showStates(tourId: $id) {
    showId
    state
    revision
    stops
    looks
  }
}
    `, {"hash":"sha256:e54a98ee87bc63bc9708d5580cd7bfdca2fdab9d97f90a20f133a71619fc9ee9"}) as unknown as TypedDocumentString<TourQuery, TourQueryVariables>;
export const SaveTourDocument = new TypedDocumentString(`
    mutation SaveTour($tour: TourJson!, $expectedVersion: Int) {
  saveTour(tour: $tour, expectedVersion: $expectedVersion) {
    id
    version
    tour
  }
}
    `, {"hash":"sha256:10f0feb20eb12e0cbca2ee7906a58f32bf50eaa4c344a45dd2693ece1f923c33"}) as unknown as TypedDocumentString<SaveTourMutation, SaveTourMutationVariables>;
export const HouseRulesDocument = new TypedDocumentString(`
    query HouseRules {
  rules
  items(kind: "truck", first: 100) {
    edges {
      node {
        id
        model
        depot
      }
    }
  }
}
    `, {"hash":"sha256:8cc73176d4e56e53e107df84a6c985b97bed5093df1ccd63e0c7344c3ab3c62c"}) as unknown as TypedDocumentString<HouseRulesQuery, HouseRulesQueryVariables>;
export const ToursDocument = new TypedDocumentString(`
    query Tours($after: String) {
  tours(first: 50, after: $after) {
    pageInfo {
      hasNextPage
      endCursor
    }
    edges {
      node {
        id
        name
        prepFrom
        returnTo
        shows
      }
    }
  }
}
    `, {"hash":"sha256:f99ff069eeb0df25e73e8365d59791d029d374e43f3a7392c55409a3688a3085"}) as unknown as TypedDocumentString<ToursQuery, ToursQueryVariables>;
export const TakenAlongDocument = new TypedDocumentString(`
    query TakenAlong($tourId: ID!, $showId: ID) {
  takenAlong(tourId: $tourId, showId: $showId) {
    shows
    hangs
    boxes
    drafts
    inForce
    revisions
    givenBack
  }
}
    `, {"hash":"sha256:37329f9e1a81792205da3ce5148cb3261c147619980478257613aa1f71093969"}) as unknown as TypedDocumentString<TakenAlongQuery, TakenAlongQueryVariables>;
export const RemoveShowDocument = new TypedDocumentString(`
    mutation RemoveShow($tourId: ID!, $showId: ID!, $expectedVersion: Int!) {
  removeShow(tourId: $tourId, showId: $showId, expectedVersion: $expectedVersion) {
    id
    version
  }
}
    `, {"hash":"sha256:8df81131a25e8ddb002e15d804b14bffacf2fc1d711356d45e04ca00e441836d"}) as unknown as TypedDocumentString<RemoveShowMutation, RemoveShowMutationVariables>;
export const PutShowBackDocument = new TypedDocumentString(`
    mutation PutShowBack($tourId: ID!, $showId: ID!, $expectedVersion: Int!) {
  putShowBack(tourId: $tourId, showId: $showId, expectedVersion: $expectedVersion) {
    id
    version
  }
}
    `, {"hash":"sha256:17fde708a456716d6c54a6cc20a1f04241eb6108940091202189ca3d53651b58"}) as unknown as TypedDocumentString<PutShowBackMutation, PutShowBackMutationVariables>;
export const RemoveTourDocument = new TypedDocumentString(`
    mutation RemoveTour($tourId: ID!, $expectedVersion: Int!) {
  removeTour(tourId: $tourId, expectedVersion: $expectedVersion) {
    id
    version
  }
}
    `, {"hash":"sha256:7b4d292119832be9ae061b6f69bedb6e2741126498907f845e68c242730a7ab8"}) as unknown as TypedDocumentString<RemoveTourMutation, RemoveTourMutationVariables>;
export const PutTourBackDocument = new TypedDocumentString(`
    mutation PutTourBack($tourId: ID!, $expectedVersion: Int!) {
  putTourBack(tourId: $tourId, expectedVersion: $expectedVersion) {
    id
    version
  }
}
    `, {"hash":"sha256:2fdd677bf97d5619a2f77038d8d888b43622405d1aaec93d7da0b8cba6c44454"}) as unknown as TypedDocumentString<PutTourBackMutation, PutTourBackMutationVariables>;
export const RemovedToursDocument = new TypedDocumentString(`
    query RemovedTours {
  removedTours {
    id
    name
    prepFrom
    returnTo
    version
    removedOn
    removedBy
    revisions
  }
}
    `, {"hash":"sha256:ec551f90e852f0f83ae99b5c05ad63b32a995ce189b3917e598a357572379fce"}) as unknown as TypedDocumentString<RemovedToursQuery, RemovedToursQueryVariables>;
export const ChooseVenueDocument = new TypedDocumentString(`
    mutation ChooseVenue($tourId: ID!, $showId: ID!, $venueId: ID) {
  chooseVenue(tourId: $tourId, showId: $showId, venueId: $venueId)
}
    `, {"hash":"sha256:051cedfe19e776bf9dae24357402ef61f7705388c5d136e98095c6962543c007"}) as unknown as TypedDocumentString<ChooseVenueMutation, ChooseVenueMutationVariables>;
export const ShowVenueDocument = new TypedDocumentString(`
    query ShowVenue($tourId: ID!, $showId: ID!) {
  venues {
    id
    venue
  }
  venueOfShow(tourId: $tourId, showId: $showId) {
    id
  }
}
    `, {"hash":"sha256:0882246cdb5be03b72e93e23f1c5941649b632249c460247e30e35a4ffad34eb"}) as unknown as TypedDocumentString<ShowVenueQuery, ShowVenueQueryVariables>;
export const HardwareModelsDocument = new TypedDocumentString(`
    query HardwareModels {
  catalogueModels {
    kind
    model
  }
}
    `, {"hash":"sha256:1815de0fedfa8a227a4ab2a27df2c610b4360cdd6f9e891cb328dc1e2d1cfa5f"}) as unknown as TypedDocumentString<HardwareModelsQuery, HardwareModelsQueryVariables>;
export const TravellingKitDocument = new TypedDocumentString(`
    query TravellingKit {
  trucks: items(kind: "truck", first: 100) {
    edges {
      node {
        id
        model
      }
    }
  }
  cases: items(kind: "case", first: 200) {
    edges {
      node {
        id
        model
      }
    }
  }
}
    `, {"hash":"sha256:effd8f732325d4f9b6ae0665eba428ed70bc2ed7c862c6c783c3d365302041f4"}) as unknown as TypedDocumentString<TravellingKitQuery, TravellingKitQueryVariables>;
export const TourPlacesDocument = new TypedDocumentString(`
    query TourPlaces($tourId: ID!) {
  tourPlaces(tourId: $tourId) {
    places {
      place
      hasRules
      judgedBy
      decisions {
        rulesOf
        because
        decidedBy
        decidedAt
      }
    }
    ruled
    home
  }
}
    `, {"hash":"sha256:3368307989904a849c171c8e0ebe258e18cd420d108d54d5705c4d74ffbe4eea"}) as unknown as TypedDocumentString<TourPlacesQuery, TourPlacesQueryVariables>;
export const AnswerPlaceDocument = new TypedDocumentString(`
    mutation AnswerPlace($tourId: ID!, $place: String!, $rulesOf: String, $reason: String!) {
  answerPlace(tourId: $tourId, place: $place, rulesOf: $rulesOf, reason: $reason) {
    home
  }
}
    `, {"hash":"sha256:327c199f5e4e1ea1140765012c1c52989041ab299d065fb0e0ee116d4163b813"}) as unknown as TypedDocumentString<AnswerPlaceMutation, AnswerPlaceMutationVariables>;
export const WholeTourDocument = new TypedDocumentString(`
    query WholeTour($tourId: ID!) {
  wholeTour(tourId: $tourId) {
    plan
    madeAt
    madeBy
  }
}
    `, {"hash":"sha256:d9b647bee78bbda1236ee213ef2364952f6a2119e6a516f603e0041a0a71f020"}) as unknown as TypedDocumentString<WholeTourQuery, WholeTourQueryVariables>;
export const PlanWholeTourDocument = new TypedDocumentString(`
    mutation PlanWholeTour($tourId: ID!, $depot: Float!, $dock: Float!, $fixedUntil: Int!) {
  planWholeTour(
    tourId: $tourId
    depot: $depot
    dock: $dock
    fixedUntil: $fixedUntil
    waitMs: 800
  ) {
    __typename
    ... on TourPlanned {
      tourId
    }
    ... on PlanningRefusal {
      code
      sentence
      reasons
    }
    ... on JobUnderWay {
      job {
        id
        state
        progress
      }
    }
  }
}
    `, {"hash":"sha256:85c226180cd8004a236c6089be78908cd24d630f4ed7cac55ca0d10c66a793ae"}) as unknown as TypedDocumentString<PlanWholeTourMutation, PlanWholeTourMutationVariables>;
export const CsvImportDocument = new TypedDocumentString(`
    query CsvImport($id: ID!) {
  csvImport(id: $id) {
    id
    of
    dryRun
    askedBy
    askedAt
    state
    step
    rowsTotal
    rowsChecked
    rowsWritten
    rowsDated
    seconds
    code
    outcome {
      rows
      added
      changed
      unchanged
      failed
      waiting
      faulty
      firstAdded
      firstFailed
      firstChanged {
        id
        what
      }
      firstWaiting
      faults {
        column
        wanted
        count
        rows
        first {
          row
          value
        }
      }
    }
  }
}
    `, {"hash":"sha256:247a0dfcf536cd3c0ac45c5f817128f5dee3c09e54d4033526f39d514b7e31db"}) as unknown as TypedDocumentString<CsvImportQuery, CsvImportQueryVariables>;
export const LatestCsvImportsDocument = new TypedDocumentString(`
    query LatestCsvImports {
  latestCsvImports {
    id
    of
    dryRun
    askedBy
    askedAt
    state
    rowsTotal
    seconds
  }
}
    `, {"hash":"sha256:c0693cf1c2ab508bc1fda7ddd0f5d799ef13657d89e9d2b0c3bcd2580646951b"}) as unknown as TypedDocumentString<LatestCsvImportsQuery, LatestCsvImportsQueryVariables>;
export const CancelCsvImportDocument = new TypedDocumentString(`
    mutation CancelCsvImport($id: ID!) {
  cancelCsvImport(id: $id) {
    id
    state
  }
}
    `, {"hash":"sha256:2793cd21327f2eb9d569a67b67d2d1a978008e5feb708000353239252b73720a"}) as unknown as TypedDocumentString<CancelCsvImportMutation, CancelCsvImportMutationVariables>;
export const KeepRowDocument = new TypedDocumentString(`
    mutation KeepRow($planId: ID!, $truck: String!, $row: Int!) {
  keepRow(planId: $planId, waitMs: 800, truck: $truck, row: $row) {
    __typename
    ... on LoadingDone {
      draftId
      changes
    }
    ... on PlanningRefusal {
      code
      sentence
      reasons
    }
    ... on JobUnderWay {
      job {
        id
        state
        progress
      }
    }
  }
}
    `, {"hash":"sha256:96918b13c235d89a28f0cf40ed46e1906fdcd0ace7b80d8705d182324c5e50a8"}) as unknown as TypedDocumentString<KeepRowMutation, KeepRowMutationVariables>;
export const KeepLoadedDocument = new TypedDocumentString(`
    mutation KeepLoaded($planId: ID!) {
  keepLoaded(planId: $planId, waitMs: 800) {
    __typename
    ... on LoadingDone {
      draftId
      changes
    }
    ... on PlanningRefusal {
      code
      sentence
      reasons
    }
    ... on JobUnderWay {
      job {
        id
        state
        progress
      }
    }
  }
}
    `, {"hash":"sha256:c37e2f99c86714443c93680f487078f839f0fb8a8774ee940acde6376816f235"}) as unknown as TypedDocumentString<KeepLoadedMutation, KeepLoadedMutationVariables>;
export const KeepPiecesDocument = new TypedDocumentString(`
    mutation KeepPieces($planId: ID!, $pieces: [String!]!) {
  keepPieces(planId: $planId, waitMs: 800, pieces: $pieces) {
    __typename
    ... on LoadingDone {
      draftId
      changes
    }
    ... on PlanningRefusal {
      code
      sentence
      reasons
    }
    ... on JobUnderWay {
      job {
        id
        state
        progress
      }
    }
  }
}
    `, {"hash":"sha256:9013964a97ea954f45a6580c23c5a3821b96bbc3f4817fda49a2a0f743037577"}) as unknown as TypedDocumentString<KeepPiecesMutation, KeepPiecesMutationVariables>;
export const LetPiecesGoDocument = new TypedDocumentString(`
    mutation LetPiecesGo($planId: ID!, $pieces: [String!]) {
  letPiecesGo(planId: $planId, waitMs: 800, pieces: $pieces) {
    __typename
    ... on LoadingDone {
      draftId
      changes
    }
    ... on PlanningRefusal {
      code
      sentence
      reasons
    }
    ... on JobUnderWay {
      job {
        id
        state
        progress
      }
    }
  }
}
    `, {"hash":"sha256:00f1d0f183df8e7f87177a7264a5fe85ebad4449aacf8b1e18acddd90b7eb6ca"}) as unknown as TypedDocumentString<LetPiecesGoMutation, LetPiecesGoMutationVariables>;
export const WaiveOrderDocument = new TypedDocumentString(`
    mutation WaiveOrder($planId: ID!, $piece: String!, $reason: String!) {
  waiveOrder(planId: $planId, waitMs: 800, piece: $piece, reason: $reason) {
    __typename
    ... on LoadingDone {
      draftId
      changes
    }
    ... on PlanningRefusal {
      code
      sentence
      reasons
    }
    ... on JobUnderWay {
      job {
        id
        state
        progress
      }
    }
  }
}
    `, {"hash":"sha256:b6a1bc3d688667e48c0942d79e76983d2b7c45a01de0fe7b48ca5f3f1fe4d6e9"}) as unknown as TypedDocumentString<WaiveOrderMutation, WaiveOrderMutationVariables>;
export const EndWaiverDocument = new TypedDocumentString(`
    mutation EndWaiver($planId: ID!, $piece: String!) {
  endWaiver(planId: $planId, waitMs: 800, piece: $piece) {
    __typename
    ... on LoadingDone {
      draftId
      changes
    }
    ... on PlanningRefusal {
      code
      sentence
      reasons
    }
    ... on JobUnderWay {
      job {
        id
        state
        progress
      }
    }
  }
}
    `, {"hash":"sha256:391b12bfd11f75ec63a91fce1a1dcceb8466541558ca8c3c2f43a77c21fa040a"}) as unknown as TypedDocumentString<EndWaiverMutation, EndWaiverMutationVariables>;
export const TakeCaseDocument = new TypedDocumentString(`
    mutation TakeCase($planId: ID!, $case: String!) {
  takeCase(planId: $planId, waitMs: 800, case: $case) {
    __typename
    ... on LoadingDone {
      draftId
      changes
    }
    ... on PlanningRefusal {
      code
      sentence
      reasons
    }
    ... on JobUnderWay {
      job {
        id
        state
        progress
      }
    }
  }
}
    `, {"hash":"sha256:17853520d59bf6eac72d01f5947469a257e6d8a1555fc735c7800ebec12ddcfe"}) as unknown as TypedDocumentString<TakeCaseMutation, TakeCaseMutationVariables>;
export const LeaveCaseDocument = new TypedDocumentString(`
    mutation LeaveCase($planId: ID!, $case: String!) {
  leaveCase(planId: $planId, waitMs: 800, case: $case) {
    __typename
    ... on LoadingDone {
      draftId
      changes
    }
    ... on PlanningRefusal {
      code
      sentence
      reasons
    }
    ... on JobUnderWay {
      job {
        id
        state
        progress
      }
    }
  }
}
    `, {"hash":"sha256:9884373cc9263c72d5f6dde23a7df97f5d8d1a8d81ecf0353363459fdd65966f"}) as unknown as TypedDocumentString<LeaveCaseMutation, LeaveCaseMutationVariables>;
export const SetGroupEndDocument = new TypedDocumentString(`
    mutation SetGroupEnd($planId: ID!, $group: String!, $end: String) {
  setGroupEnd(planId: $planId, waitMs: 800, group: $group, end: $end) {
    __typename
    ... on LoadingDone {
      draftId
      changes
    }
    ... on PlanningRefusal {
      code
      sentence
      reasons
    }
    ... on JobUnderWay {
      job {
        id
        state
        progress
      }
    }
  }
}
    `, {"hash":"sha256:0fa3c0e6f12013908adb8f9edf744f927a0112196c13e2e75ee7b3d6e36297b0"}) as unknown as TypedDocumentString<SetGroupEndMutation, SetGroupEndMutationVariables>;
export const RowSwapDocument = new TypedDocumentString(`
    query RowSwap($planId: ID!, $truck: String!, $first: Int!, $second: Int!) {
  rowSwap(planId: $planId, truck: $truck, first: $first, second: $second) {
    first
    second
    sideBeforeMm
    sideAfterMm
    axles {
      axle
      beforeKg
      afterKg
      limitKg
    }
    breaches {
      piece
      mayBeWaived
      sentence
    }
  }
}
    `, {"hash":"sha256:a7edb04f348b01389a4ca8e3b6486a2a960906c8594b2d76e6991d99890a45d1"}) as unknown as TypedDocumentString<RowSwapQuery, RowSwapQueryVariables>;
export const SwapRowsDocument = new TypedDocumentString(`
    mutation SwapRows($planId: ID!, $truck: String!, $first: Int!, $second: Int!, $reason: String) {
  swapRows(
    planId: $planId
    waitMs: 800
    truck: $truck
    first: $first
    second: $second
    reason: $reason
  ) {
    __typename
    ... on LoadingDone {
      draftId
      changes
    }
    ... on PlanningRefusal {
      code
      sentence
      reasons
    }
    ... on JobUnderWay {
      job {
        id
        state
        progress
      }
    }
  }
}
    `, {"hash":"sha256:33b6d637575d02479d17f786b74f883bd5a5e8dd4e33840fcf3af2fb5e68d01c"}) as unknown as TypedDocumentString<SwapRowsMutation, SwapRowsMutationVariables>;
export const TakePieceAlongDocument = new TypedDocumentString(`
    mutation TakePieceAlong($planId: ID!, $piece: String!) {
  takePieceAlong(planId: $planId, piece: $piece, waitMs: 800) {
    __typename
    ... on LoadingDone {
      draftId
      changes
    }
    ... on PlanningRefusal {
      code
      sentence
      reasons
    }
    ... on JobUnderWay {
      job {
        id
        state
        progress
      }
    }
  }
}
    `, {"hash":"sha256:6a4ece21adaf6d2bacf5dd3f47047b84cea578b107c73ea24c40734071e05c65"}) as unknown as TypedDocumentString<TakePieceAlongMutation, TakePieceAlongMutationVariables>;
export const LeavePieceDocument = new TypedDocumentString(`
    mutation LeavePiece($planId: ID!, $piece: String!, $reason: String!) {
  leavePiece(planId: $planId, piece: $piece, reason: $reason, waitMs: 800) {
    __typename
    ... on LoadingDone {
      draftId
      changes
    }
    ... on PlanningRefusal {
      code
      sentence
      reasons
    }
    ... on JobUnderWay {
      job {
        id
        state
        progress
      }
    }
  }
}
    `, {"hash":"sha256:8fcc0c363dec7929715c60d58b0791fcd658ca554e13aad245b3b5c7a821a972"}) as unknown as TypedDocumentString<LeavePieceMutation, LeavePieceMutationVariables>;
export const VenuesDocument = new TypedDocumentString(`
    query Venues {
  venues {
    id
    version
    venue
    shows {
      tourId
      showId
    }
  }
}
    `, {"hash":"sha256:f3383aeff96641530fd3070e365d4980eab3f468daf3a85954a0a58442539dab"}) as unknown as TypedDocumentString<VenuesQuery, VenuesQueryVariables>;
export const SaveVenueDocument = new TypedDocumentString(`
    mutation SaveVenue($id: ID, $venue: VenueJson!, $expectedVersion: Int) {
  saveVenue(id: $id, venue: $venue, expectedVersion: $expectedVersion) {
    id
  }
}
    `, {"hash":"sha256:44d1e78c330761e6e9acbe55048ed1cbf8403d1c441ee91d6a021e80bde4feaf"}) as unknown as TypedDocumentString<SaveVenueMutation, SaveVenueMutationVariables>;
export const VisitsDocument = new TypedDocumentString(`
    query Visits($from: String!, $to: String!, $depot: String) {
  depots
  visits(from: $from, to: $to, depot: $depot) {
    id
    onDay
    depot
    placeName
    state
    remark
    entered
    version
    list
  }
  showsInSeason(from: $from, to: $to) {
    tourId
    showId
    name
    from
    to
  }
}
    `, {"hash":"sha256:7f02ee851957506e066146b338139755f88e037eed37740b30dca66bac568aa0"}) as unknown as TypedDocumentString<VisitsQuery, VisitsQueryVariables>;
export const VisitSeasonDocument = new TypedDocumentString(`
    query VisitSeason($from: String!, $to: String!, $depot: String, $withIdle: Boolean!, $without: [ID!]!, $check: String) {
  visitSeason(
    from: $from
    to: $to
    depot: $depot
    withIdle: $withIdle
    without: $without
    check: $check
  ) {
    answer
    without
    names {
      id
      kind
      model
    }
  }
}
    `, {"hash":"sha256:e9ade6273d1f56f1f67093c559dec791dd327a640e8289c0efec8d5b51787bbc"}) as unknown as TypedDocumentString<VisitSeasonQuery, VisitSeasonQueryVariables>;
export const CountedUseDocument = new TypedDocumentString(`
    query CountedUse($depot: String) {
  countedUse(depot: $depot) {
    itemId
    kind
    model
    depot
    jurisdiction
    basis
    every
    since
    count
    isDue
  }
}
    `, {"hash":"sha256:d43fdc9949d71ee8244b6aef1fa249f61e47eebfcfc6f9ea46c3315b1a8ad071"}) as unknown as TypedDocumentString<CountedUseQuery, CountedUseQueryVariables>;
export const AddVisitDaysDocument = new TypedDocumentString(`
    mutation AddVisitDays($days: [PossibleDayInput!]!) {
  addVisitDays(days: $days)
}
    `, {"hash":"sha256:77671ca2aec1c454bcb8f1d3214ca8e7a6e2e3bac605791a8dce3de72e861f15"}) as unknown as TypedDocumentString<AddVisitDaysMutation, AddVisitDaysMutationVariables>;
export const AgreeVisitsDocument = new TypedDocumentString(`
    mutation AgreeVisits($from: String!, $to: String!, $depot: String, $visits: [ID!]!) {
  agreeVisits(from: $from, to: $to, depot: $depot, visits: $visits)
}
    `, {"hash":"sha256:3ee97e672094fb4cc58d57270155e8f0e708df724f773a3213037bd43ce09ed7"}) as unknown as TypedDocumentString<AgreeVisitsMutation, AgreeVisitsMutationVariables>;
export const MoveVisitDocument = new TypedDocumentString(`
    mutation MoveVisit($id: ID!, $onDay: String!, $expectedVersion: Int!) {
  moveVisit(id: $id, onDay: $onDay, expectedVersion: $expectedVersion)
}
    `, {"hash":"sha256:a02f56f7a95d1810cd85238117380a53cbf18dcbf3a342f01a404e5727026a9e"}) as unknown as TypedDocumentString<MoveVisitMutation, MoveVisitMutationVariables>;
export const CancelVisitDocument = new TypedDocumentString(`
    mutation CancelVisit($id: ID!, $expectedVersion: Int!) {
  cancelVisit(id: $id, expectedVersion: $expectedVersion)
}
    `, {"hash":"sha256:f6e80611a1298e26922c245a1619ce6c5903bd1d6b9c20d14ac896831ce0d30c"}) as unknown as TypedDocumentString<CancelVisitMutation, CancelVisitMutationVariables>;
export const VisitListDocument = new TypedDocumentString(`
    query VisitList($id: ID!) {
  visitList(id: $id) {
    visit {
      id
      onDay
      placeName
      state
      list
      entered
      version
    }
    items {
      id
      kind
      model
      place
      intervals
      rules
    }
    lines {
      itemId
      examinationId
      outcome
      report
      remark
    }
  }
}
    `, {"hash":"sha256:7918e1d1d031b18e5cc681bd85a24ec8cf632ec0541b58dcce9240974bb569a6"}) as unknown as TypedDocumentString<VisitListQuery, VisitListQueryVariables>;
export const EnterVisitResultsDocument = new TypedDocumentString(`
    mutation EnterVisitResults($id: ID!, $examiner: String!, $reportFile: ID, $lines: [VisitResultInput!]!) {
  enterVisitResults(
    id: $id
    examiner: $examiner
    reportFile: $reportFile
    lines: $lines
  ) {
    visit {
      entered
    }
  }
}
    `, {"hash":"sha256:d900362f7b1f118a4020f920e980f1cee826fab9a4c08ae3ec0dacb09a6aba94"}) as unknown as TypedDocumentString<EnterVisitResultsMutation, EnterVisitResultsMutationVariables>;
export const OwnCalendarsDocument = new TypedDocumentString(`
    query OwnCalendars {
  ownCalendars {
    id
    depot
    madeAt
  }
}
    `, {"hash":"sha256:04bec53b266ae3e57722999d0126a593c72cb2caece43dce013ff04fe094bedd"}) as unknown as TypedDocumentString<OwnCalendarsQuery, OwnCalendarsQueryVariables>;
export const RenewCalendarDocument = new TypedDocumentString(`
    mutation RenewCalendar($depot: String) {
  renewCalendar(depot: $depot)
}
    `, {"hash":"sha256:f7151c62c298647e706ddd1f89fd00cbd916abb0aa2e36689d8b32ecd01fddd8"}) as unknown as TypedDocumentString<RenewCalendarMutation, RenewCalendarMutationVariables>;
export const WithdrawCalendarDocument = new TypedDocumentString(`
    mutation WithdrawCalendar($id: ID!) {
  withdrawCalendar(id: $id)
}
    `, {"hash":"sha256:598d16925e9b8920d542d1d16a5334f254eaa3d0dd74841adf9943e65a671bb2"}) as unknown as TypedDocumentString<WithdrawCalendarMutation, WithdrawCalendarMutationVariables>;
export const MeDocument = new TypedDocumentString(`
    query Me {
  me {
    id
    name
    role
    mustChange
    deputyships {
      officer
      until
      depot
      tourId
    }
    onePerson {
      since
      until
      by
      reason
      endedBecause
    }
  }
}
    `, {"hash":"sha256:4116ab0dfefa29de45f15aaa5bf1437cbe5bb53fd3f150066288d6a6e179452e"}) as unknown as TypedDocumentString<MeQuery, MeQueryVariables>;
export const JobStateDocument = new TypedDocumentString(`
    query JobState($id: ID!) {
  job(id: $id) {
    id
    state
    progress
  }
}
    `, {"hash":"sha256:b66cbe67d8a09e230001cbe0df01a939b512da504ef52d8628357a69f60da81e"}) as unknown as TypedDocumentString<JobStateQuery, JobStateQueryVariables>;
export const CancelJobDocument = new TypedDocumentString(`
    mutation CancelJob($id: ID!) {
  cancelJob(id: $id) {
    id
    state
    progress
  }
}
    `, {"hash":"sha256:c88f9c6acc552e463bd5669c81ceb2b1ccc3a1c9cb747f9e6de8929e654efac0"}) as unknown as TypedDocumentString<CancelJobMutation, CancelJobMutationVariables>;
export const RuledPlacesDocument = new TypedDocumentString(`
    query RuledPlaces {
  rules
}
    `, {"hash":"sha256:83006205df3e6e10f14b50da4eebd6a5cbba54b068e0ed95e9a630306da86c09"}) as unknown as TypedDocumentString<RuledPlacesQuery, RuledPlacesQueryVariables>;