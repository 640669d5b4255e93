import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import type { IntegerProgramSolver } from '#kernel';
import {
  type BetweenShows,
  type BoxFacts,
  type Floor,
  type PackPlan,
  type PlanDifference,
  type WorkList,
  betweenShows,
  differenceBetween,
  makePackPlan,
  moveKey,
  tickText,
  workListOf,
} from '#pack-plan';
import type { Words } from '#words';
import type { TourFile } from '#tour-file';
import { WORDS } from '../../platform/words.js';
import { CLOCK, type Clock } from '../../platform/config.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { recordEvents } from '../../platform/event-log.js';
import { BadInputError, NotFoundError } from '../../platform/graphql/fault.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { moveBox, quarantineItem } from '../register/kit.writer.js';
import { TourFileReader } from '../../planning/tour-file.reader.js';
import { PlanReader, SOLVER } from './plan.reader.js';
import { PlanWriter } from './plan.writer.js';
import { PackPlanRow } from './rows.js';
import { putTick, ticksOf } from './tick.repository.js';

export interface Swap {
  readonly draftId: string;
  /** Other plans that counted on the box, in words. */
  readonly marked: readonly string[];
  readonly difference: PlanDifference;
}

/** Box moves as they are carried out on the floor, and what happens when a box fails. */
@Injectable()
export class WorkService {
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

  async list(planId: string): Promise<WorkList> {
    return this.listIn(this.dataSource.manager, await this.row(this.dataSource.manager, planId));
  }

  /** Carries a move of the list out: the register's floor changes with it. Refused where the box is not on top of where the list says. */
  async doMove(planId: string, box: string, from: string, to: string, who: SignedIn): Promise<WorkList> {
    const outcome = await this.unitOfWork.run<WorkList>(async (manager) => {
      const row = await this.plans.inForce(manager, planId);
      const list = await this.listIn(manager, row);
      const move = list.moves.find((each) => each.box === box && each.from === from && each.to === to);
      if (!move)
        throw new BadInputError([
          { field: 'box', value: box, wanted: 'a move of the list as it now is; look at it again, the floor has changed' },
        ]);
      const fault = await moveBox(manager, box, from, to);
      if (fault) throw new BadInputError([fault]);
      if (list.status === 'as planned') await putTick(manager, planId, moveKey(move.number), this.clock.now(), who);
      await recordEvents(manager, who, this.clock.now(), [
        { what: 'moved', itemId: box, tourId: row.tourId, sentence: `Moved from ${from} to ${to}: ${move.why}.`, place: to },
      ]);
      return { ok: true, value: await this.listIn(manager, row) };
    });
    if (!outcome.ok) throw new Error('a move is never refused');
    return outcome.value;
  }

  /**
   * A box failed: it is quarantined, and a draft is made that keeps every other box where the plan in force has it. Gives the new draft's id
   * and the other plans that counted on the box.
   */
  async swap(planId: string, serial: string, reason: string, who: SignedIn): Promise<Swap> {
    const why = reason.trim().replace(/\.$/, '');
    if (why === '' || why.length > 300)
      throw new BadInputError([{ field: 'reason', value: reason.slice(0, 80), wanted: 'a sentence of 1 to 300 characters' }]);
    const outcome = await this.unitOfWork.run<Swap>(async (manager) => {
      const seen = await this.plans.inForce(manager, planId);
      // A draft that an earlier swap made is what the crew works to: the next swap starts from it.
      const draft = await manager.getRepository(PackPlanRow).findOneBy({ tourId: seen.tourId, showId: seen.showId, state: 'draft' });
      const row = draft && flies(draft.plan, serial) ? draft : seen;
      if (!flies(row.plan, serial))
        throw new BadInputError([{ field: 'serial', value: serial, wanted: `a box of this plan of ${row.plan.show.name}` }]);
      await quarantineItem(manager, serial, why);
      await recordEvents(manager, who, this.clock.now(), [
        { what: 'quarantined', itemId: serial, tourId: row.tourId, sentence: `Failed, taken out of ${row.plan.show.name}: ${why}.` },
      ]);
      const file = await this.reader.load(manager, row.tourId);
      const plan = makePackPlan(
        file,
        row.showId,
        { now: () => performance.now(), integerProgram: this.integerProgram, timeLimitSeconds: 5 },
        { plan: row.plan, failed: new Set([serial]) },
        this.words,
      );
      const draftId = await this.writer.putDraft(manager, plan, who.name);
      const others = await manager.getRepository(PackPlanRow).find({ where: [{ state: 'released' }, { state: 'draft' }] });
      const marked = others
        .filter((each) => each.id !== row.id && each.id !== draftId && flies(each.plan, serial))
        .map((each) => `${each.plan.show.name} (${each.plan.tour.name}), ${each.revision ? `revision ${each.revision}` : 'draft'}`);
      return { ok: true, value: { draftId, marked, difference: differenceBetween(row.plan, plan, this.words) } };
    });
    if (!outcome.ok) throw new Error('a swap is never refused');
    return outcome.value;
  }

  /** From each show of a tour to the next, where both have a plan: the released one, else the draft. */
  async between(tourId: string): Promise<{ from: string; to: string; what: BetweenShows }[]> {
    const file = await this.reader.load(this.dataSource.manager, tourId);
    const data = file.tour;
    const rows = await this.dataSource.getRepository(PackPlanRow).find({
      where: [
        { tourId, state: 'released' },
        { tourId, state: 'draft' },
      ],
    });
    const inForce = (showId: string) =>
      rows.find((row) => row.showId === showId && row.state === 'released') ?? rows.find((row) => row.showId === showId);
    const limits = { now: () => performance.now(), integerProgram: this.integerProgram, timeLimitSeconds: 2 };
    return data.shows.slice(1).flatMap((show, index) => {
      const before = inForce(data.shows[index]!.id);
      const after = inForce(show.id);
      if (!before || !after) return [];
      return [
        {
          from: before.plan.show.name,
          to: after.plan.show.name,
          what: betweenShows(before.plan, after.plan, factsOf(file), (cart) => carriesOf(file, cart), limits, this.words),
        },
      ];
    });
  }

  private async listIn(manager: EntityManager, row: PackPlanRow): Promise<WorkList> {
    const file = await this.reader.load(manager, row.tourId);
    const ticks = new Set(await ticksOf(manager, row.id));
    const done = new Set(row.plan.carts.moves.filter((move) => ticks.has(tickText(moveKey(move.number)))).map((move) => move.number));
    const limits = { now: () => performance.now(), integerProgram: this.integerProgram, timeLimitSeconds: 4 };
    return workListOf(row.plan, floorOf(file, row.plan), factsOf(file), done, limits, this.words);
  }

  private async row(manager: EntityManager, planId: string): Promise<PackPlanRow> {
    const row = await manager.getRepository(PackPlanRow).findOneBy({ id: planId });
    if (!row) throw new NotFoundError(`The plan ${planId}`);
    return row;
  }
}

const flies = (plan: PackPlan, serial: string): boolean => plan.carts.loads.some((load) => load.boxes.some((box) => box.serial === serial));

/** The floor of the register as far as the plan knows its carts and boxes. */
function floorOf(file: TourFile, plan: PackPlan): Floor {
  const items = new Map(file.items.map((item) => [item.id, item]));
  const carts = plan.carts.floorBefore.carts.map(({ cart, capacity, givesOnly }) => ({
    cart,
    capacity,
    ...(givesOnly ? { givesOnly } : {}),
    boxes: [...(items.get(cart)?.stack ?? [])],
    carries: carriesOf(file, cart),
  }));
  const onCarts = new Set(file.items.flatMap((item) => (item.kind === 'cart' ? (item.stack ?? []) : [])));
  const loose = file.items.filter(
    (item) => item.kind === 'box' && !onCarts.has(item.id) && item.in === undefined && item.depot === plan.tour.depot,
  );
  return { carts, loose: loose.map((item) => item.id) };
}

function carriesOf(file: TourFile, cart: string): readonly string[] | undefined {
  const model = file.items.find((item) => item.id === cart)?.model;
  return file.catalogue.carts.find((each) => each.model === model)?.carries;
}

function factsOf(file: TourFile): BoxFacts {
  const items = new Map(file.items.map((item) => [item.id, item]));
  return {
    model: (serial) => items.get(serial)?.model ?? serial,
    against: (serial) => {
      const item = items.get(serial);
      if (!item) return { code: 'not-on-file' };
      return item.state === 'in service' ? null : { code: 'state', state: item.state, remark: item.reason ?? null };
    },
  };
}
