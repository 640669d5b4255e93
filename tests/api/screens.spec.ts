import type { SignedIn } from '../../apps/api/src/platform/sign-in/person.js';
import { AsyncLocalStorage } from 'node:async_hooks';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DataSource } from 'typeorm';
import { AttentionQuery } from '../../apps/api/src/features/attention/attention.query.js';
import { CountService } from '../../apps/api/src/features/count/count.service.js';
import { ProposalQuery } from '../../apps/api/src/features/edition/waiting/proposal.query.js';
import { LogQuery } from '../../apps/api/src/features/log/log.query.js';
import { FleetQuery } from '../../apps/api/src/features/plan/bookings/fleet.query.js';
import { HoldService } from '../../apps/api/src/features/plan/bookings/hold.service.js';
import { PlanFreshness } from '../../apps/api/src/features/plan/stored/plan-freshness.reader.js';
import { PlanPartsQuery } from '../../apps/api/src/features/plan/page/plan-parts.query.js';
import { ShowPageQuery } from '../../apps/api/src/features/plan/page/show-page.query.js';
import { FloorCodeReader } from '../../apps/api/src/features/plan/work/floor-code.reader.js';
import { getTickable } from '../../apps/api/src/features/plan/page/tickable.query.js';
import { BeginningQuery } from '../../apps/api/src/features/beginning/beginning.query.js';
import { CatalogueQuery } from '../../apps/api/src/features/register/catalogue.query.js';
import { DatesListQuery } from '../../apps/api/src/features/register/dates/dates-list.query.js';
import { InspectionQuery } from '../../apps/api/src/features/inspection/inspection.query.js';
import { RecordPageQuery } from '../../apps/api/src/features/register/records/record-page.query.js';
import { ItemPageQuery } from '../../apps/api/src/features/register/item-page.query.js';
import { RegisterListQuery } from '../../apps/api/src/features/register/register-list.query.js';
import { RemovalQuery } from '../../apps/api/src/features/tour/removal.query.js';
import { TourListQuery } from '../../apps/api/src/features/tour/tour-list.query.js';
import { VisitQuery } from '../../apps/api/src/features/visit/visit.query.js';
import { loadSeason } from '../../apps/api/src/features/visit/season-snapshot.js';
import { addDays } from '../../libs/kernel/index.js';
import { type TestApp, startTestApp, testDay } from '../support/test-app.js';

/**
 * What each screen asks of the database, kept beside its query as SQL and held against what the running code sends. Written anew with
 * CARTWRIGHT_WRITE_SQL=1. No screen reads the whole register, however it is asked.
 */
describe('the SQL of the screens', () => {
  let test: TestApp;
  let planId: string;
  /** The house goes on meanwhile: what its jobs and its record of changes ask is not a screen's. */
  const asking = new AsyncLocalStorage<true>();
  const sent: { text: string; values: readonly unknown[] }[] = [];
  beforeAll(async () => {
    test = await startTestApp();
    const system = await test.as('system');
    planId = (
      await system.graphql('mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { planId } } }')
    ).data.makePackPlan.planId;
    await test.app.get(DatesListQuery).examined(10);
    await test.app.get(PlanFreshness).changed([planId]);
    const dataSource = test.app.get(DataSource);
    const create = dataSource.createQueryRunner.bind(dataSource);
    dataSource.createQueryRunner = (mode) => {
      const runner = create(mode);
      const query = runner.query.bind(runner);
      runner.query = ((text: string, values: unknown[] = [], ...rest: []) => {
        if (asking.getStore()) sent.push({ text, values });
        return query(text, values, ...rest);
      }) as never;
      return runner;
    };
  });
  afterAll(() => test.close());

  const of = <T>(type: new (...args: never[]) => T): T => test.app.get(type);
  const show = ['harbour-lights', 'quayside'] as const;
  const officer = { id: '00000000-0000-4000-8000-000000000000', role: 'safety' } as SignedIn;
  const year = [testDay, addDays(testDay, 365)] as const;
  const features = 'apps/api/src/features';

  it.each<[file: string, screens: Record<string, () => Promise<unknown>>]>([
    [
      'register/register-list',
      { 'a page': () => of(RegisterListQuery).items({ kind: 'box' }), 'two letters': () => of(RegisterListQuery).items({ search: 'p-' }) },
    ],
    [
      'register/item-page',
      {
        head: () => of(ItemPageQuery).head('H-01'),
        history: () => of(ItemPageQuery).history('H-01'),
      },
    ],
    ['register/records/record-page', { 'a page': () => of(RecordPageQuery).records('H-01') }],
    [
      'inspection/inspection',
      {
        'named items': () => of(InspectionQuery).items({ ids: ['H-01', 'G-1'] }),
        'an extract': () => of(InspectionQuery).items({ kinds: ['hoist'], depots: ['Ferry Lane'] }),
      },
    ],
    [
      'register/dates/dates-list',
      {
        'a page': () => of(DatesListQuery).examined(20),
        'of a depot': () => of(DatesListQuery).examined(20, null, { depot: 'Ferry Lane', days: 30 }),
        'of a kind': () => of(DatesListQuery).examined(20, null, { kind: 'hoist', days: 90 }),
        'of a tour': () => of(DatesListQuery).examined(20, null, { tour: show[0] }),
      },
    ],
    [
      'visit/visit',
      {
        'visits of a season': () => of(VisitQuery).inSeason(...year, null),
        'shows of a season': () => of(VisitQuery).shows(...year),
      },
    ],
    [
      'visit/season-snapshot',
      {
        'a season': () =>
          loadSeason(
            of(DataSource),
            { from: year[0], to: year[1], depot: null, withIdle: false, without: [], check: 'examination' as const },
            testDay,
          ),
      },
    ],
    [
      'log/log',
      {
        'a page': () => of(LogQuery).lines({ item: 'H-01', day: testDay }),
        'a page of acts': () => of(LogQuery).acts({ item: 'H-01', day: testDay }),
      },
    ],
    ['beginning/beginning', { counts: () => of(BeginningQuery).counts() }],
    ['register/catalogue', { models: () => of(CatalogueQuery).models(), rules: () => of(CatalogueQuery).rules('load') }],
    ['attention/attention', { 'notes of a role': () => of(AttentionQuery).notes('safety') }],
    [
      'tour/removal',
      {
        'removed tours': () => of(RemovalQuery).tours(),
        'removed shows': () => of(RemovalQuery).shows(show[0]),
        'what a removal takes along': () => of(RemovalQuery).takenAlong(...show),
      },
    ],
    [
      'edition/waiting/proposal',
      {
        'a page': () => of(ProposalQuery).proposals(officer, 20),
        'of an item': () => of(ProposalQuery).ofItem(officer, 'H-01'),
        'of the catalogue': () => of(ProposalQuery).ofCatalogue(officer),
      },
    ],
    ['tour/tour-list', { 'a page': () => of(TourListQuery).tours() }],
    ['count/count-sheet', { sheet: () => of(CountService).sheet(...show) }],
    [
      'plan/bookings/fleet',
      { calendar: () => of(FleetQuery).calendar(testDay, 30, null), remedies: () => of(FleetQuery).remedies('Plover', testDay, null) },
    ],
    ['plan/bookings/holds', { list: () => of(HoldService).list() }],
    [
      'plan/page/show-page',
      {
        head: () => of(ShowPageQuery).page(...show),
        'whether a plan is stale': () => of(PlanFreshness).changed([planId]),
        version: () => of(ShowPageQuery).version(...show),
        'states of the shows of a tour': () => of(ShowPageQuery).heads(show[0]),
      },
    ],
    [
      'plan/page/plan-parts',
      {
        'one part': () => of(PlanPartsQuery).carts(planId),
        'names of parts': () => of(PlanPartsQuery).hangs(planId),
        'findings of a weight': () => of(PlanPartsQuery).countOf(planId, 'stop'),
        ticks: () => of(PlanPartsQuery).ticks(planId),
        'carts read': () => of(PlanPartsQuery).cartChecks(planId),
        whole: () => of(PlanPartsQuery).whole(planId),
      },
    ],
    ['plan/work/floor-code.reader', { 'a code read on the floor': () => of(FloorCodeReader).codeOf(planId, 'p-016') }],
    ['plan/page/tickable', { 'what a tick decides on': () => getTickable(of(DataSource).manager, planId) }],
  ])('%s', async (file, screens) => {
    const parts: string[] = [];
    for (const [screen, ask] of Object.entries(screens)) {
      sent.length = 0;
      await asking.run(true, ask);
      const statements = sent.filter(({ text }) => !/^(START TRANSACTION|COMMIT|ROLLBACK)/.test(text));
      expect(statements.length).toBeGreaterThan(0);
      expect(statements.length).toBeLessThan(10);
      for (const { text, values } of statements) if (/\$1::text\[\] IS NULL OR item\.id/.test(text)) expect(values[0]).not.toBeNull();
      parts.push(`-- ${screen}\n${[...new Set(statements.map(({ text }) => `${text.trim()};`))].join('\n')}\n`);
    }
    const path = join(features, /\.reader$|-snapshot$/.test(file) ? `${file}.sql` : `${file}.query.sql`);
    const now = parts.join('\n');
    if (process.env.CARTWRIGHT_WRITE_SQL === '1') writeFileSync(path, now);
    expect(readFileSync(path, 'utf8')).toBe(now);
  });
});
