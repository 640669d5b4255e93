import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import type { IntegerProgramSolver } from '#kernel';
import { type PackPlan, type RowSwap, differenceBetween, replanTrucks, swapOf, whyNotUsable } from '#pack-plan';
import { type TourFile, afterAct, noLoading } from '#tour-file';
import { type Words, sentenceOf, tell } from '#words';
import { WORDS } from '../../platform/words.js';
import { CLOCK, type Clock } from '../../platform/config.js';
import { type Outcome, UnitOfWork } from '../../platform/database/unit-of-work.js';
import { recordEvents } from '../../platform/event-log.js';
import { BadInputError } from '../../platform/graphql/fault.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { PlanReader, SOLVER } from '../plan/plan.reader.js';
import { PlanWriter } from '../plan/plan.writer.js';
import { TourFileReader } from '../../planning/tour-file.reader.js';
import * as decide from './loading-decisions.js';
import type { LoadingDone, LoadingRefusal } from './loading.types.js';
import { LoadingActRow } from './rows.js';

type Decided = decide.Decision | LoadingRefusal;

/** What is wanted of the trucks: one load, one decision, the trucks planned around it, one save. Released plans never change. */
@Injectable()
export class LoadingService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly dataSource: DataSource,
    private readonly reader: TourFileReader,
    private readonly plans: PlanReader,
    private readonly writer: PlanWriter,
    @Inject(SOLVER) private readonly integerProgram: IntegerProgramSolver,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(WORDS) private readonly words: Words,
  ) {}

  keep(planId: string, pieces: readonly string[], who: SignedIn) {
    return this.act(planId, who, (plan) => decide.decideKeep(plan, pieces));
  }

  keepRow(planId: string, truck: string, row: number, who: SignedIn) {
    return this.act(planId, who, (plan) => decide.decideKeepRow(plan, truck, row));
  }

  keepLoaded(planId: string, who: SignedIn) {
    return this.act(planId, who, async (plan, _file, manager) =>
      decide.decideKeepLoaded(plan, new Set(await this.plans.ticks(manager, planId))),
    );
  }

  letGo(planId: string, pieces: readonly string[] | null, who: SignedIn) {
    return this.act(planId, who, (plan, file) => decide.decideLetGo(file, plan, pieces));
  }

  waive(planId: string, piece: string, reason: string, who: SignedIn) {
    return this.act(planId, who, (plan) => decide.decideWaive(plan, [piece], reason, who.name, this.today()));
  }

  endWaiver(planId: string, piece: string, who: SignedIn) {
    return this.act(planId, who, (plan, file) => decide.decideEndWaiver(file, plan, piece));
  }

  take(planId: string, caseId: string, who: SignedIn) {
    return this.act(planId, who, (plan, file) => {
      const against = whyNotUsable(file, plan.show.id, caseId);
      return decide.decideTake(file, plan, caseId, against && tell(this.words.against, against), who.name, this.today());
    });
  }

  leave(planId: string, caseId: string, who: SignedIn) {
    return this.act(planId, who, (plan, file) => decide.decideLeave(file, plan, caseId));
  }

  setEnd(planId: string, group: string, end: string | null, who: SignedIn) {
    return this.act(planId, who, (plan) => decide.decideEnd(plan, group, end));
  }

  /** What the swap would do, without doing it. */
  async lookAtSwap(planId: string, truckId: string, first: number, second: number): Promise<RowSwap> {
    const { manager } = this.dataSource;
    const row = await this.plans.inForce(manager, planId);
    return this.swapIn(await this.reader.load(manager, row.tourId), row.plan, truckId, first, second);
  }

  swap(planId: string, truckId: string, first: number, second: number, reason: string | null, who: SignedIn) {
    return this.act(planId, who, (plan, file): Decided => {
      const swap = this.swapIn(file, plan, truckId, first, second);
      const hard = swap.breaches.filter((each) => !each.mayBeWaived);
      if (hard.length > 0 || (swap.breaches.length > 0 && reason === null)) {
        const code = hard.length > 0 ? 'swap-breaks-rules' : 'swap-out-of-turn';
        const sentence = tell(this.words.refusals, { code, truck: truckId, first, second });
        return { sentence, reasons: swap.breaches.map((each) => each.sentence) };
      }
      const waived =
        swap.breaches.length > 0
          ? decide.decideWaive(plan, [...new Set(swap.breaches.map((each) => each.piece))], reason!, who.name, this.today())
          : { acts: [], sentence: '' };
      return {
        acts: [...waived.acts, { kind: 'keep', pieces: swap.places }],
        sentence: `Exchanged rows ${first} and ${second} of ${truckId}. ${waived.sentence}`.trim(),
      };
    });
  }

  private swapIn(file: TourFile, plan: PackPlan, truckId: string, first: number, second: number): RowSwap {
    const truck = decide.truckOf(plan, truckId);
    decide.rowOf(truck, 'first', first);
    decide.rowOf(truck, 'second', second);
    if (first === second) throw new BadInputError([{ field: 'second', value: second, wanted: 'another row than the first' }]);
    return swapOf(file, plan, truckId, first, second, this.words);
  }

  private async act(
    planId: string,
    who: SignedIn,
    decision: (plan: PackPlan, file: TourFile, manager: EntityManager) => Decided | Promise<Decided>,
  ): Promise<LoadingDone | LoadingRefusal> {
    const outcome = await this.unitOfWork.run<LoadingDone, LoadingRefusal>(async (manager) => {
      const row = await this.plans.inForce(manager, planId);
      await this.plans.refuseBehindDraft(manager, row);
      const file = await this.reader.load(manager, row.tourId);
      const decided = await decision(row.plan, file, manager);
      if ('reasons' in decided) return { ok: false, error: decided };
      return this.carryOut(manager, file, row, decided, who);
    });
    return outcome.ok ? outcome.value : outcome.error;
  }

  private async carryOut(
    manager: EntityManager,
    file: TourFile,
    row: { readonly id: string; readonly tourId: string; readonly showId: string; readonly plan: PackPlan },
    { acts, sentence }: decide.Decision,
    who: SignedIn,
  ): Promise<Outcome<LoadingDone, LoadingRefusal>> {
    const { tourId, showId, plan: before } = row;
    const at = this.clock.now();
    for (const act of acts) await manager.getRepository(LoadingActRow).insert({ tourId, showId, at, who: who.name, act: act as object });
    const shows = file.tour.shows.map((show) =>
      show.id === showId ? { ...show, loading: acts.reduce(afterAct, show.loading ?? noLoading) } : show,
    );
    const limits = { now: () => performance.now(), integerProgram: this.integerProgram, timeLimitSeconds: 5 };
    const plan = replanTrucks({ ...file, tour: { ...file.tour, shows } }, before, limits, this.words);
    const reasons = whyNot(before, plan, this.words);
    if (reasons.length > 0)
      return { ok: false, error: { sentence: tell(this.words.refusals, { code: 'trucks-cannot-be-loaded' }), reasons } };
    const draftId = await this.writer.putDraft(manager, plan, who.name, row);
    await recordEvents(manager, who, at, [{ what: 'loading', tourId, sentence: `${before.show.name}: ${sentence}` }]);
    return { ok: true, value: { draftId, changes: [...differenceBetween(before, plan, this.words).sentences] } };
  }

  private today(): string {
    return this.clock.now().toISOString().slice(0, 10);
  }
}

/** What is broken or newly left over, in words. */
function whyNot(before: PackPlan, after: PackPlan, words: Words): string[] {
  const was = new Set(before.truck.leftOver.map((each) => each.id));
  const left = after.truck.leftOver.filter((each) => !was.has(each.id));
  if (after.truck.refused) return after.truck.refused.map((each) => each.sentence);
  return left.slice(0, 20).map(({ id, label, reason, fact }) =>
    sentenceOf(words, {
      code: 'left-over',
      subjects: { piece: { kind: 'piece', id, name: label } },
      numbers: {},
      date: null,
      why: fact ?? { code: 'engine-says', says: reason },
    }),
  );
}
