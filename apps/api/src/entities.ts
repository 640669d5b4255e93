import { BarredActAnswerRow, BarredActRow } from './features/plan/stored/barred-act.rows.js';
import { OnePersonRow } from './features/one-person/rows.js';
import { DeputyRow } from './features/deputy/rows.js';
import { LoadingActRow } from './features/loading/rows.js';
import { AnsweringPartRow, AnsweringRow, EditionRow, ProposalRow } from './features/edition/rows.js';
import { HardwareCountRow } from './features/count/rows.js';
import { BookingRow, CartCheckRow, PackPlanRow, PlanImprovementRow, TickRow } from './features/plan/stored/rows.js';
import { PlaceAnswerRow } from './features/place/rows.js';
import { LotSplitRow } from './features/register/lots/rows.js';
import { TourPlanRow } from './features/plan/tour/rows.js';
import { ExaminationRow, IncidentRow, ItemRecordRow, ItemRow, ModelRow, ReportFileRow, RuleRow } from './features/register/rows.js';
import { FloorRecordRow } from './features/return/rows.js';
import { LoadReadingRow, SignOffRow } from './features/rigging/rows.js';
import { CsvImportEndRow, CsvImportRow } from './features/transfer/import/rows.js';
import { RemovedShowRow, TourRow } from './features/tour/rows.js';
import { ShowVenueRow, VenueRow } from './features/venue/rows.js';
import { CalendarEntryRow, CalendarFeedRow, VisitLineRow, VisitRow } from './features/visit/rows.js';
import { JobRow } from './planning/jobs/rows.js';
import { EventRow } from './platform/event-log.js';
import { SealRow, SealedLineRow } from './platform/seal/rows.js';
import { RequestRow } from './platform/request-once/rows.js';
import { AccountRow, OfficerProposalRow, SessionRow, SignInTryRow } from './platform/sign-in/rows.js';

/** Every table's row class. */
export const entities = [
  AccountRow,
  SessionRow,
  SignInTryRow,
  OfficerProposalRow,
  RequestRow,
  EventRow,
  SealRow,
  SealedLineRow,
  ModelRow,
  RuleRow,
  ItemRow,
  ItemRecordRow,
  ExaminationRow,
  IncidentRow,
  ReportFileRow,
  LotSplitRow,
  TourRow,
  PlaceAnswerRow,
  RemovedShowRow,
  VenueRow,
  ShowVenueRow,
  VisitRow,
  VisitLineRow,
  CalendarFeedRow,
  CalendarEntryRow,
  PackPlanRow,
  BookingRow,
  CartCheckRow,
  PlanImprovementRow,
  TourPlanRow,
  TickRow,
  JobRow,
  LoadingActRow,
  LoadReadingRow,
  SignOffRow,
  HardwareCountRow,
  FloorRecordRow,
  EditionRow,
  ProposalRow,
  DeputyRow,
  OnePersonRow,
  BarredActRow,
  BarredActAnswerRow,
  CsvImportRow,
  CsvImportEndRow,
  AnsweringRow,
  AnsweringPartRow,
];
