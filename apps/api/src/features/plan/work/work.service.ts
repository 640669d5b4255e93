import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { type Result, ok, refuse } from '#kernel';
import { type MoveMade, type Place, type WorkList, againstMoveBack, moveKey } from '#pack-plan';
import type { PlaceReason } from '#trade';
import { type Words, tell } from '#words';
import { CLOCK, type Clock } from '../../../platform/config/config.js';
import { WORDS } from '../../../platform/config/words.js';
import { UnitOfWork } from '../../../platform/database/unit-of-work.js';
import { recordEvents } from '../../../platform/event-log.js';
import { BadInputError } from '../../../platform/faults/fault.js';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { type Keyed, LookCache } from '../../../planning/jobs/look-cache.js';
import { taskFile } from '../../../planning/solve/solver-pool.js';
import { moveBox } from '../../register/kit.writer.js';
import type { Between } from './between.task.js';
import { floorKey } from './floor-key.js';
import { recordsSince, tickedNumberOf } from './floor-records.js';
import { whyKey } from './why-key.js';
import { PlanReader } from '../stored/plan.reader.js';
import { putTick, takeTickBack } from '../stored/tick.repository.js';

const listTask = taskFile(import.meta.url, './work-list.task.js');
const whyTask = taskFile(import.meta.url, './why.task.js');
const betweenTask = taskFile(import.meta.url, './between.task.js');

/** Floors that may come between a look at the list and the move, before somebody is told to look again. */
const mostFloors = 4;

/** Box moves as they are carried out on the floor. */
@Injectable()
export class WorkService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly dataSource: DataSource,
    private readonly plans: PlanReader,
    private readonly looks: LookCache,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(WORDS) private readonly words: Words,
  ) {}

  async list(planId: string): Promise<WorkList> {
    return (await this.keyedList(planId)).answer;
  }

  /** Carries a move of the list out: the register's floor changes with it. Refused where the box is not on top of where the list says. */
  async doMove(planId: string, move: MoveMade, who: SignedIn): Promise<WorkList> {
    for (let floors = 1; ; floors++) {
      const seen = await this.keyedList(planId);
      const outcome = await this.moveOn(planId, seen, move, who);
      if (outcome.ok) return this.list(planId);
      if (floors >= mostFloors) throw noSuchMove(move);
    }
  }

  /** Takes a move back that was carried out: the box stands where it came from, and the move is left to do. Refused where something stands on it. */
  async undoMove(planId: string, move: MoveMade, who: SignedIn): Promise<WorkList> {
    await this.unitOfWork.run<void>(async (manager) => {
      const { tourId } = await this.plans.headInForce(manager, planId);
      const { box, from, to } = move;
      const against = againstMoveBack(await recordsSince(manager, tourId, move), move);
      if (against) throw new BadInputError([{ field: 'box', value: box, wanted: tell(this.words.moveBackRefusals, against) }]);
      const fault = await moveBox(manager, box, to, from);
      if (fault) throw new BadInputError([fault]);
      const number = await tickedNumberOf(manager, planId, move);
      if (number !== null) await takeTickBack(manager, planId, moveKey(number));
      const sentence = `Back from ${to} to ${from}: the move was taken back.`;
      await recordEvents(manager, who, this.clock.now(), [
        { what: 'moved back', itemId: box, tourId, sentence, place: from, fromPlace: to },
      ]);
      return ok(undefined);
    });
    return this.list(planId);
  }

  /** Why a box, or a cart, stands where the plan puts it. */
  async why(planId: string, place: Place): Promise<PlaceReason> {
    const { manager } = this.dataSource;
    const { tourId } = await this.plans.headInForce(manager, planId);
    const key = await whyKey(manager, tourId, planId, place);
    return (await this.looks.look<PlaceReason>(key, { file: whyTask, subject: { planId, place } })).answer;
  }

  /** From each show of a tour to the next, where both have a plan. */
  async between(tourId: string): Promise<readonly Between[]> {
    const { manager } = this.dataSource;
    const plans = await this.plans.headsInForce(manager, tourId);
    const key = await floorKey(
      manager,
      plans.map((each) => each.id),
    );
    return (await this.looks.look<readonly Between[]>(key, { file: betweenTask, subject: { tourId } })).answer;
  }

  private async keyedList(planId: string): Promise<Keyed<WorkList>> {
    const key = await floorKey(this.dataSource.manager, [planId]);
    return this.looks.look<WorkList>(key, { file: listTask, subject: { planId } });
  }

  /** Refused where the floor is not the one that the list was made for. */
  private moveOn(
    planId: string,
    { key, answer: list }: Keyed<WorkList>,
    move: MoveMade,
    who: SignedIn,
  ): Promise<Result<void, 'another floor'>> {
    return this.unitOfWork.run<void, 'another floor'>(async (manager) => {
      const { tourId } = await this.plans.headInForce(manager, planId);
      if ((await floorKey(manager, [planId])) !== key) return refuse('another floor');
      const { box, from, to } = move;
      const found = list.moves.find((each) => each.box === box && each.from === from && each.to === to);
      if (!found) throw noSuchMove(move);
      const fault = await moveBox(manager, box, from, to);
      if (fault) throw new BadInputError([fault]);
      const at = this.clock.now();
      if (list.status === 'as planned') await putTick(manager, planId, moveKey(found.number), { at, who, remark: null });
      await recordEvents(manager, who, at, [
        { what: 'moved', itemId: box, tourId, sentence: `Moved from ${from} to ${to}: ${found.why}.`, place: to, fromPlace: from },
      ]);
      return ok(undefined);
    });
  }
}

const noSuchMove = ({ box }: MoveMade): BadInputError =>
  new BadInputError([{ field: 'box', value: box, wanted: 'a move of the list as it now is; look at it again, the floor has changed' }]);
