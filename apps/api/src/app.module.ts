import { ApolloDriver, type ApolloDriverConfig } from '@nestjs/apollo';
import { type DynamicModule, Module } from '@nestjs/common';
import { GraphQLModule } from '@nestjs/graphql';
import { TypeOrmModule } from '@nestjs/typeorm';
import type { Request, Response } from 'express';
import type { Logger } from 'pino';
import { type Words, english } from '#words';
import { dataSourceOptions } from './data-source.js';
import { AccountResolver } from './features/account/account.resolver.js';
import { PeopleService } from './features/account/people.service.js';
import { SetUpService } from './features/account/set-up.service.js';
import { SignInService } from './features/account/sign-in.service.js';
import { AccountService } from './features/account/account.service.js';
import { AttentionQuery } from './features/attention/attention.query.js';
import { AttentionResolver } from './features/attention/attention.resolver.js';
import { LogController } from './features/log/log.controller.js';
import { HouseQuery } from './features/house/house.query.js';
import { HouseResolver } from './features/house/house.resolver.js';
import { LogQuery } from './features/log/log.query.js';
import { LogResolver } from './features/log/log.resolver.js';
import { LoadingResolver } from './features/loading/loading.resolver.js';
import { LoadingService } from './features/loading/loading.service.js';
import { CountResolver } from './features/count/count.resolver.js';
import { CountService } from './features/count/count.service.js';
import { PlanDifferenceQuery } from './features/plan/page/plan-difference.query.js';
import { BarredReader } from './features/plan/stored/barred.reader.js';
import { PlanFreshness } from './features/plan/stored/plan-freshness.reader.js';
import { FindingResolver } from './features/plan/page/finding.resolver.js';
import { PlanPartsQuery } from './features/plan/page/plan-parts.query.js';
import { PlanPartsResolver } from './features/plan/page/plan-parts.resolver.js';
import { ShowPageQuery } from './features/plan/page/show-page.query.js';
import { LoadingHandler } from './features/loading/loading.handler.js';
import { MakeHandler } from './features/plan/make/make.handler.js';
import { MakeResolver } from './features/plan/make/make.resolver.js';
import { MakeService } from './features/plan/make/make.service.js';
import { WholeTourHandler } from './features/plan/tour/whole-tour.handler.js';
import { WholeTourResolver } from './features/plan/tour/whole-tour.resolver.js';
import { WholeTourService } from './features/plan/tour/whole-tour.service.js';
import { ImproveHandler } from './features/plan/improve/improve.handler.js';
import { ImproveResolver } from './features/plan/improve/improve.resolver.js';
import { ImproveService } from './features/plan/improve/improve.service.js';
import { SearchHandler } from './features/plan/make/search.handler.js';
import { SwapHandler } from './features/plan/make/swap.handler.js';
import { PlanReader } from './features/plan/stored/plan.reader.js';
import { PlanResolver } from './features/plan/release/plan.resolver.js';
import { PlanService } from './features/plan/release/plan.service.js';
import { SeenResolver } from './features/plan/release/seen.resolver.js';
import { SeenService } from './features/plan/release/seen.service.js';
import { PlanWriter } from './features/plan/stored/plan.writer.js';
import { FleetQuery } from './features/plan/bookings/fleet.query.js';
import { FleetResolver } from './features/plan/bookings/fleet.resolver.js';
import { HoldService } from './features/plan/bookings/hold.service.js';
import { WorkResolver } from './features/plan/work/work.resolver.js';
import { FloorCodeReader } from './features/plan/work/floor-code.reader.js';
import { WorkService } from './features/plan/work/work.service.js';
import { KitReader } from './features/register/kit.reader.js';
import { CatalogueQuery } from './features/register/catalogue.query.js';
import { DatesListQuery } from './features/register/dates/dates-list.query.js';
import { DatesListResolver } from './features/register/dates/dates-list.resolver.js';
import { ItemDates } from './features/register/item-dates.writer.js';
import { ItemPageQuery } from './features/register/item-page.query.js';
import { DueListController } from './features/register/dates/due-list.controller.js';
import { RegisterListController } from './features/register/register-list.controller.js';
import { SerialResolver } from './features/register/serial/serial.resolver.js';
import { SerialService } from './features/register/serial/serial.service.js';
import { ManyResolver } from './features/transfer/many.resolver.js';
import { ExtractController } from './features/inspection/extract.controller.js';
import { InspectionQuery } from './features/inspection/inspection.query.js';
import { InspectionResolver } from './features/inspection/inspection.resolver.js';
import { RecordPageQuery } from './features/register/records/record-page.query.js';
import { RegisterListQuery } from './features/register/register-list.query.js';
import { BeginningResolver } from './features/beginning/beginning.resolver.js';
import { BeginningQuery } from './features/beginning/beginning.query.js';
import { ExaminationRulesService } from './features/register/rules/examination-rules.service.js';
import { RulesResolver } from './features/register/rules/rules.resolver.js';
import { RegisterResolver } from './features/register/register.resolver.js';
import { ExaminationWriter } from './features/register/examination.writer.js';
import { RegisterService } from './features/register/register.service.js';
import { RuleService } from './features/register/rule.service.js';
import { Answerings } from './features/edition/waiting/answerings.js';
import { ProposalQuery } from './features/edition/waiting/proposal.query.js';
import { ProposalResolver } from './features/edition/waiting/proposal.resolver.js';
import { ProposalService } from './features/edition/waiting/proposal.service.js';
import { ProposalWriter } from './features/edition/proposal.writer.js';
import { PointsController } from './features/rigging/points.controller.js';
import { FaultService } from './features/return/fault.service.js';
import { PictureController } from './features/register/picture.controller.js';
import { FaultWriter } from './features/return/fault.writer.js';
import { ReturnQuery } from './features/return/return.query.js';
import { ReturnResolver } from './features/return/return.resolver.js';
import { ReturnService } from './features/return/return.service.js';
import { PrepQuery } from './features/prep/prep.query.js';
import { PrepResolver } from './features/prep/prep.resolver.js';
import { PrepService } from './features/prep/prep.service.js';
import { RiggingResolver } from './features/rigging/rigging.resolver.js';
import { RiggingService } from './features/rigging/rigging.service.js';
import { LotReader } from './features/register/lots/lot.reader.js';
import { DeputyResolver } from './features/deputy/deputy.resolver.js';
import { DeputyService } from './features/deputy/deputy.service.js';
import { OnePersonResolver } from './features/one-person/one-person.resolver.js';
import { OnePersonService } from './features/one-person/one-person.service.js';
import { PlaceService } from './features/place/place.service.js';
import { PlaceResolver } from './features/place/place.resolver.js';
import { LotResolver } from './features/register/lots/lot.resolver.js';
import { LentResolver } from './features/register/lent/lent.resolver.js';
import { LentService } from './features/register/lent/lent.service.js';
import { PaperController } from './features/register/lent/paper.controller.js';
import { LotService } from './features/register/lots/lot.service.js';
import { LotWriter } from './features/register/lots/lot.writer.js';
import { LotCsvController } from './features/transfer/lot-csv.controller.js';
import { ReportController } from './features/register/report.controller.js';
import { CalendarController } from './features/visit/calendar/calendar.controller.js';
import { CalendarResolver } from './features/visit/calendar/calendar.resolver.js';
import { CalendarService } from './features/visit/calendar/calendar.service.js';
import { ResultsService } from './features/visit/results.service.js';
import { CountedUseQuery } from './features/visit/counted-use.query.js';
import { VisitQuery } from './features/visit/visit.query.js';
import { VisitResolver } from './features/visit/visit.resolver.js';
import { VisitService } from './features/visit/visit.service.js';
import { TourReader } from './features/tour/tour.reader.js';
import { TourResolver } from './features/tour/tour.resolver.js';
import { RemovalQuery } from './features/tour/removal.query.js';
import { RemovalService } from './features/tour/removal.service.js';
import { TourChecks } from './features/tour/tour-checks.js';
import { TourListQuery } from './features/tour/tour-list.query.js';
import { TourService } from './features/tour/tour.service.js';
import { PlaceDaysReader } from './features/venue/place-days.reader.js';
import { VenueResolver } from './features/venue/venue.resolver.js';
import { VenueService } from './features/venue/venue.service.js';
import { ItemCsvController, ModelCsvController } from './features/transfer/csv.controller.js';
import { CsvService } from './features/transfer/csv.service.js';
import { ExaminationCsvController } from './features/transfer/examined/examination-csv.controller.js';
import { ExaminationCsvService } from './features/transfer/examined/examination-csv.service.js';
import { ModelCsvService } from './features/transfer/model-csv.service.js';
import { ImportController } from './features/transfer/import/import.controller.js';
import { ImportResolver } from './features/transfer/import/import.resolver.js';
import { Imports } from './features/transfer/import/imports.js';
import { TourFileController } from './features/transfer/tour-file.controller.js';
import { TourFileService } from './features/transfer/tour-file.service.js';
import { type Clock, type Config, systemClock } from './platform/config/config.js';
import { formatError } from './platform/faults/format-error.js';
import { JOB_HANDLERS, type JobHandler } from './planning/jobs/job-handler.js';
import { JobResolver } from './planning/jobs/job.resolver.js';
import { JobRunner } from './planning/jobs/job-runner.js';
import { Jobs } from './planning/jobs/jobs.js';
import { LookCache } from './planning/jobs/look-cache.js';
import { SOLVERS, SolverPool, type Solvers } from './planning/solve/solver-pool.js';
import { TourFileReader } from './planning/snapshot/tour-file.reader.js';
import { limitCost, limitRules, operationLimits } from './platform/door/operation-limits.js';
import { countOperations } from './platform/graphql/count-operations.js';
import { statusOfErrors } from './platform/graphql/status-of-errors.js';
import { Metrics } from './platform/metrics/metrics.js';
import { PlatformModule } from './platform/platform.module.js';

export interface AppOptions {
  readonly config: Config;
  readonly logger: Logger;
  readonly clock?: Clock;
  /** English unless told otherwise. */
  readonly words?: Words;
  /** Around the threads that plan; a test holds them there. */
  readonly solversAround?: (pool: Solvers) => Solvers;
  /** Where the schema is written; memory unless the generator asks. */
  readonly schemaFile?: string;
}

/** The table of contents: what each feature brings. */
const features = [
  SignInService,
  AccountService,
  PeopleService,
  SetUpService,
  AccountResolver,
  KitReader,
  ItemDates,
  RegisterListQuery,
  ItemPageQuery,
  RecordPageQuery,
  InspectionQuery,
  InspectionResolver,
  DatesListQuery,
  DatesListResolver,
  CatalogueQuery,
  ExaminationWriter,
  RegisterService,
  SerialService,
  SerialResolver,
  ManyResolver,
  RuleService,
  RegisterResolver,
  ProposalWriter,
  ProposalQuery,
  ProposalService,
  Answerings,
  ProposalResolver,
  BeginningQuery,
  BeginningResolver,
  ExaminationRulesService,
  RulesResolver,
  TourFileReader,
  TourReader,
  TourListQuery,
  TourChecks,
  RemovalQuery,
  RemovalService,
  TourService,
  TourResolver,
  PlaceDaysReader,
  VenueService,
  VenueResolver,
  VisitQuery,
  CountedUseQuery,
  VisitService,
  ResultsService,
  VisitResolver,
  CalendarService,
  CalendarResolver,
  PlanReader,
  PlanFreshness,
  BarredReader,
  PlanPartsQuery,
  PlanPartsResolver,
  FindingResolver,
  PlanDifferenceQuery,
  ShowPageQuery,
  PlanWriter,
  PlanService,
  SeenService,
  MakeService,
  MakeResolver,
  PlanResolver,
  SeenResolver,
  ImproveService,
  ImproveResolver,
  FloorCodeReader,
  WorkService,
  HoldService,
  FleetQuery,
  FleetResolver,
  WorkResolver,
  LoadingService,
  LoadingResolver,
  HouseQuery,
  HouseResolver,
  LogQuery,
  LotReader,
  LotWriter,
  LentService,
  LentResolver,
  LotService,
  LotResolver,
  PlaceService,
  DeputyService,
  PlaceResolver,
  DeputyResolver,
  OnePersonService,
  OnePersonResolver,
  LogResolver,
  RiggingService,
  RiggingResolver,
  CountService,
  CountResolver,
  ReturnQuery,
  ReturnService,
  FaultWriter,
  FaultService,
  ReturnResolver,
  WholeTourService,
  WholeTourResolver,
  PrepQuery,
  PrepService,
  PrepResolver,
  AttentionQuery,
  AttentionResolver,
  CsvService,
  ModelCsvService,
  ExaminationCsvService,
  Imports,
  ImportResolver,
  TourFileService,
];

/** What is planned as a job, kind by kind. */
const jobHandlers = [MakeHandler, SwapHandler, LoadingHandler, SearchHandler, ImproveHandler, WholeTourHandler];

/** Planning that is asked for, and where it is done. */
const planning = [
  SolverPool,
  Jobs,
  JobRunner,
  JobResolver,
  LookCache,
  { provide: JOB_HANDLERS, useFactory: (...handlers: JobHandler<never>[]) => handlers, inject: jobHandlers },
  ...jobHandlers,
];

/** The API as one module: platform, database, planning, operations, features. */
@Module({})
export class AppModule {
  static with(options: AppOptions): DynamicModule {
    const { config, logger, clock = systemClock, words = english, solversAround = (pool: Solvers) => pool, schemaFile } = options;
    return {
      module: AppModule,
      imports: [
        PlatformModule.with(config, clock, logger, words),
        TypeOrmModule.forRoot(dataSourceOptions(config.databaseUrl)),
        GraphQLModule.forRootAsync<ApolloDriverConfig>({
          driver: ApolloDriver,
          inject: [Metrics],
          useFactory: (metrics: Metrics) => ({
            path: '/graphql',
            autoSchemaFile: schemaFile ?? true,
            sortSchema: true,
            graphiql: false,
            playground: false,
            // For whoever may send operations of their own: see `listedOnly`.
            introspection: true,
            csrfPrevention: true,
            allowBatchedHttpRequests: false,
            persistedQueries: false,
            parseOptions: { maxTokens: operationLimits.tokens },
            maxRecursiveSelections: operationLimits.nodes,
            validationRules: limitRules,
            formatError: formatError(metrics),
            // Said by `statusOfErrors`.
            preserveHttpStatusForExecutionErrors: false,
            plugins: [countOperations(metrics), limitCost(), statusOfErrors()],
            context: ({ req, res }: { req: Request; res: Response }) => ({ req, res }),
          }),
        }),
      ],
      controllers: [
        DueListController,
        RegisterListController,
        ExtractController,
        ReportController,
        ItemCsvController,
        ModelCsvController,
        ExaminationCsvController,
        ImportController,
        TourFileController,
        PointsController,
        LogController,
        CalendarController,
        LotCsvController,
        PaperController,
        PictureController,
      ],
      providers: [{ provide: SOLVERS, useFactory: solversAround, inject: [SolverPool] }, ...planning, ...features],
    };
  }
}
