import { CreateVisits20261126185200 } from './20261126185200-create-visits.js';
import { CreatePlaceAnswers20261126192500 } from './20261126192500-create-place-answers.js';
import { CreateLotSplits20261126191200 } from './20261126191200-create-lot-splits.js';
import { LogEveryChange20261126175200 } from './20261126175200-log-every-change.js';
import { CodePlaces20261126181800 } from './20261126181800-code-places.js';
import { KeepRemoved20261126141800 } from './20261126141800-keep-removed.js';
import { AddEventFromPlace20261126142700 } from './20261126142700-add-event-from-place.js';
import { KeepPeople20261126115600 } from './20261126115600-keep-people.js';
import { CreateTables20261125132500 } from './20261125132500-create-tables.js';
import { KeepWholeRevisions20261126113000 } from './20261126113000-keep-whole-revisions.js';
import { AddReportHash20261126182800 } from './20261126182800-add-report-hash.js';
import { AddPlanParts20261126011500 } from './20261126011500-add-plan-parts.js';
import { CreateCounts20261125193000 } from './20261125193000-create-counts.js';
import { AddCorrectionReason20261126112800 } from './20261126112800-add-correction-reason.js';
import { AddIncidentOrder20261126104500 } from './20261126104500-add-incident-order.js';
import { AddFleetIndex20261126021500 } from './20261126021500-add-fleet-index.js';
import { AddHoldUntil20261125173500 } from './20261125173500-add-hold-until.js';
import { CreateLoading20261125190000 } from './20261125190000-create-loading.js';
import { CreateReportFile20261125161500 } from './20261125161500-create-report-file.js';
import { CreateRequest20261126004900 } from './20261126004900-create-request.js';
import { CreateRiggingRecords20261125192000 } from './20261125192000-create-rigging-records.js';
import { CreateVenue20261126020500 } from './20261126020500-create-venue.js';
import { NamePersons20261126014500 } from './20261126014500-name-persons.js';
import { KeyById20261126013000 } from './20261126013000-key-by-id.js';
import { CreateJob20261126013500 } from './20261126013500-create-job.js';
import { CreatePlanImprovement20261126123700 } from './20261126123700-create-plan-improvement.js';
import { CreateProposals20261126143000 } from './20261126143000-create-proposals.js';
import { CreateSearch20261125155500 } from './20261125155500-create-search.js';
import { AddItemDates20261126004700 } from './20261126004700-add-item-dates.js';
import { TellChanges20261126010500 } from './20261126010500-tell-changes.js';
import { CreateItemRecord20261126214500 } from './20261126214500-create-item-record.js';
import { CreateCsvImport20261126183500 } from './20261126183500-create-csv-import.js';
import { IndexActs20261126220932 } from './20261126220932-index-acts.js';
import { CreateDeputies20261126225000 } from './20261126225000-create-deputies.js';
import { CreateBarredActs20261126225100 } from './20261126225100-create-barred-acts.js';
import { CreateSizeDay20261126230500 } from './20261126230500-create-size-day.js';
import { IndexDueList20261126230800 } from './20261126230800-index-due-list.js';
import { CreateBarredActAnswers20261126231000 } from './20261126231000-create-barred-act-answers.js';
import { GuardLeaving20261126232900 } from './20261126232900-guard-leaving.js';
import { KnowDevices20261127071500 } from './20261127071500-know-devices.js';
import { CreateOnePerson20261127072900 } from './20261127072900-create-one-person.js';
import { ReplaceNamesOfAnswers20261127083000 } from './20261127083000-replace-names-of-answers.js';
import { KeepRecordsOfChecks20261127082900 } from './20261127082900-keep-records-of-checks.js';
import { AddOutsidePersons20261127073000 } from './20261127073000-add-outside-persons.js';
import { CreateFloorRecords20261127080900 } from './20261127080900-create-floor-records.js';
import { TickUnloading20261127081000 } from './20261127081000-tick-unloading.js';
import { KnowWhoseHand20261127082200 } from './20261127082200-know-whose-hand.js';
import { AddTickRemark20261127083500 } from './20261127083500-add-tick-remark.js';
import { KeepTriggersToTheirTables20261127091500 } from './20261127091500-keep-triggers-to-their-tables.js';
import { CreateAnswering20261127115000 } from './20261127115000-create-answering.js';
import { IndexRegisterOrders20261127120000 } from './20261127120000-index-register-orders.js';
import { NarrowLeaving20261127121500 } from './20261127121500-narrow-leaving.js';
import { CreateTourPlan20261127123900 } from './20261127123900-create-tour-plan.js';
import { GuardLogAndDisabling20261127132600 } from './20261127132600-guard-log-and-disabling.js';
import { IndexDevices20261127133000 } from './20261127133000-index-devices.js';

/** In the order in which they run; a file that has landed is never edited. */
export const migrations = [
  CreateTables20261125132500,
  CreateSearch20261125155500,
  CreateReportFile20261125161500,
  AddHoldUntil20261125173500,
  CreateLoading20261125190000,
  CreateRiggingRecords20261125192000,
  CreateCounts20261125193000,
  CreateRequest20261126004900,
  AddItemDates20261126004700,
  TellChanges20261126010500,
  AddPlanParts20261126011500,
  KeyById20261126013000,
  CreateJob20261126013500,
  NamePersons20261126014500,
  CreateVenue20261126020500,
  AddFleetIndex20261126021500,
  AddIncidentOrder20261126104500,
  AddCorrectionReason20261126112800,
  KeepWholeRevisions20261126113000,
  CreatePlanImprovement20261126123700,
  KeepPeople20261126115600,
  KeepRemoved20261126141800,
  AddEventFromPlace20261126142700,
  CreateProposals20261126143000,
  LogEveryChange20261126175200,
  CodePlaces20261126181800,
  AddReportHash20261126182800,
  CreateCsvImport20261126183500,
  CreateVisits20261126185200,
  CreateLotSplits20261126191200,
  CreatePlaceAnswers20261126192500,
  CreateItemRecord20261126214500,
  IndexActs20261126220932,
  CreateDeputies20261126225000,
  CreateBarredActs20261126225100,
  CreateSizeDay20261126230500,
  IndexDueList20261126230800,
  CreateBarredActAnswers20261126231000,
  GuardLeaving20261126232900,
  KnowDevices20261127071500,
  CreateOnePerson20261127072900,
  AddOutsidePersons20261127073000,
  CreateFloorRecords20261127080900,
  TickUnloading20261127081000,
  KnowWhoseHand20261127082200,
  KeepRecordsOfChecks20261127082900,
  ReplaceNamesOfAnswers20261127083000,
  AddTickRemark20261127083500,
  KeepTriggersToTheirTables20261127091500,
  CreateAnswering20261127115000,
  IndexRegisterOrders20261127120000,
  NarrowLeaving20261127121500,
  CreateTourPlan20261127123900,
  GuardLogAndDisabling20261127132600,
  IndexDevices20261127133000,
];
