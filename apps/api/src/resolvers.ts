import { AccountResolver } from './features/account/account.resolver.js';
import { AttentionResolver } from './features/attention/attention.resolver.js';
import { CountResolver } from './features/count/count.resolver.js';
import { ProposalResolver } from './features/edition/waiting/proposal.resolver.js';
import { FleetResolver } from './features/plan/bookings/fleet.resolver.js';
import { HouseResolver } from './features/house/house.resolver.js';
import { LogResolver } from './features/log/log.resolver.js';
import { InspectionResolver } from './features/inspection/inspection.resolver.js';
import { LoadingResolver } from './features/loading/loading.resolver.js';
import { ImproveResolver } from './features/plan/improve/improve.resolver.js';
import { PlanPartsResolver } from './features/plan/page/plan-parts.resolver.js';
import { PlanResolver } from './features/plan/release/plan.resolver.js';
import { SeenResolver } from './features/plan/release/seen.resolver.js';
import { WorkResolver } from './features/plan/work/work.resolver.js';
import { BeginningResolver } from './features/beginning/beginning.resolver.js';
import { RulesResolver } from './features/register/rules/rules.resolver.js';
import { OnePersonResolver } from './features/one-person/one-person.resolver.js';
import { DeputyResolver } from './features/deputy/deputy.resolver.js';
import { PlaceResolver } from './features/place/place.resolver.js';
import { LentResolver } from './features/register/lent/lent.resolver.js';
import { LotResolver } from './features/register/lots/lot.resolver.js';
import { SerialResolver } from './features/register/serial/serial.resolver.js';
import { ManyResolver } from './features/transfer/many.resolver.js';
import { DatesListResolver } from './features/register/dates/dates-list.resolver.js';
import { RegisterResolver } from './features/register/register.resolver.js';
import { PrepResolver } from './features/prep/prep.resolver.js';
import { ReturnResolver } from './features/return/return.resolver.js';
import { RiggingResolver } from './features/rigging/rigging.resolver.js';
import { WholeTourResolver } from './features/plan/tour/whole-tour.resolver.js';
import { MakeResolver } from './features/plan/make/make.resolver.js';
import { JobResolver } from './planning/jobs/job.resolver.js';
import { TourResolver } from './features/tour/tour.resolver.js';
import { ImportResolver } from './features/transfer/import/import.resolver.js';
import { CalendarResolver } from './features/visit/calendar/calendar.resolver.js';
import { VisitResolver } from './features/visit/visit.resolver.js';
import { VenueResolver } from './features/venue/venue.resolver.js';

/** Every resolver: what the schema is made of. */
export const resolvers = [
  AccountResolver,
  AttentionResolver,
  CountResolver,
  FleetResolver,
  ProposalResolver,
  ImproveResolver,
  WholeTourResolver,
  InspectionResolver,
  LoadingResolver,
  HouseResolver,
  LogResolver,
  LentResolver,
  LotResolver,
  SerialResolver,
  ManyResolver,
  DeputyResolver,
  OnePersonResolver,
  PlaceResolver,
  PlanPartsResolver,
  PlanResolver,
  SeenResolver,
  BeginningResolver,
  DatesListResolver,
  RegisterResolver,
  RulesResolver,
  PrepResolver,
  ReturnResolver,
  RiggingResolver,
  JobResolver,
  MakeResolver,
  ImportResolver,
  TourResolver,
  VenueResolver,
  VisitResolver,
  CalendarResolver,
  WorkResolver,
];
