import { Inject, Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { ok } from '#kernel';
import {
  type BenchCheck,
  type HardwareResult,
  type PackPlan,
  afterBench,
  benchChecks,
  splaysToSet,
  trunkLines,
  wrongCounts,
  wrongSplays,
} from '#pack-plan';
import { CLOCK, type Clock } from '../../platform/config/config.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { recordEvents } from '../../platform/event-log.js';
import { BadInputError } from '../../platform/faults/fault.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { PlanReader } from '../plan/stored/plan.reader.js';
import { findFloorItem } from '../register/floor-item.reader.js';
import { FaultWriter } from '../return/fault.writer.js';
import { type OfShow, keepFloorRecords } from '../return/floor-record.writer.js';
import type { CountedInTrunk } from './prep.types.js';

const wrong = (field: string, value: unknown, wanted: string) => new BadInputError([{ field, value, wanted }]);
const checks = Object.keys(benchChecks) as BenchCheck[];
const mostDeg = 45;

/** Before a show leaves: boxes tested on the bench, splays read back, trunks counted. What failed is out at once. */
@Injectable()
export class PrepService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly plans: PlanReader,
    private readonly faults: FaultWriter,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  bench(planId: string, itemId: string, failed: readonly string[], remark: string, who: SignedIn): Promise<void> {
    return this.write(planId, async (manager, of) => {
      const item = await findFloorItem(manager, itemId);
      if (item?.kind !== 'box') throw wrong('itemId', itemId.slice(0, 80), 'the serial of a box on file');
      const found = failed.map((each, index) => {
        const check = checks.find((one) => one === each);
        if (!check || failed.indexOf(each) !== index)
          throw wrong(`failed[${index}]`, each.slice(0, 80), `each once, of ${checks.join(', ')}`);
        return check;
      });
      const said = remark.trim().replace(/\.$/, '');
      if (said.length > 200) throw wrong('remark', remark.slice(0, 80), 'up to 200 characters');
      const leads = afterBench(found);
      const passed = leads?.then !== 'out';
      const what = `on the bench: ${found.join(', ')}${said && `, ${said}`}`;
      const data = { agrees: passed, passed, failed: found, remark: said };
      await this.record(manager, of, { itemId, kind: 'bench', data }, passed ? 'Passed its bench test.' : `Failed ${what}.`, who);
      if (leads) await this.faults.keep(manager, item, { ...leads, what, pieces: null }, who);
    });
  }

  splays(planId: string, loadId: string, read: readonly number[], who: SignedIn): Promise<void> {
    return this.write(planId, async (manager, of) => {
      const load = (await this.part<PackPlan['carts']>(manager, planId, 'carts')).loads.find((each) => each.id === loadId);
      if (!load || load.cart === null) throw wrong('load', loadId.slice(0, 80), 'a cart load of this plan that has a cart');
      const set = splaysToSet(load);
      if (read.length !== set.length)
        throw wrong('splays', `a list of ${read.length}`, `${set.length}: those that are set in the cart, top first`);
      read.forEach((each, index) => {
        if (!(each >= -mostDeg && each <= mostDeg)) throw wrong(`splays[${index}]`, each, `degrees from -${mostDeg} to ${mostDeg}`);
      });
      const bySlot = new Map(set.map(({ slot }, index) => [slot, read[index] ?? Number.NaN]));
      const off = wrongSplays(load, bySlot);
      const sentence =
        off.length === 0
          ? `Splays of ${loadId} read back as planned: ${read.join(', ')} degrees.`
          : `Splays of ${loadId} read otherwise than planned: ${off.map((each) => `slot ${each.slot} reads ${bySlot.get(each.slot)}, planned ${each.splayDeg}`).join('; ')}.`;
      const data = { agrees: off.length === 0, load: loadId, splays: read };
      await this.record(manager, of, { itemId: load.cart, kind: 'splays', data }, sentence, who);
    });
  }

  trunk(planId: string, trunkId: string, counts: readonly CountedInTrunk[], who: SignedIn): Promise<void> {
    return this.write(planId, async (manager, of) => {
      const trunks = trunkLines((await this.part<HardwareResult>(manager, planId, 'hardware')).lines);
      const lines = trunks.get(trunkId);
      if (!lines) throw wrong('trunk', trunkId.slice(0, 80), `a trunk of this plan: ${[...trunks.keys()].join(', ')}`);
      counts.forEach(({ lot, count }, index) => {
        if (!lines.some((each) => each.lot === lot)) throw wrong(`counts[${index}].lot`, lot.slice(0, 80), `a batch of ${trunkId}`);
        if (count < 0 || count > 1_000_000) throw wrong(`counts[${index}].count`, count, '0 to 1,000,000 pieces');
      });
      const off = wrongCounts(lines, new Map(counts.map((each) => [each.lot, each.count])));
      const sentence =
        off.length === 0
          ? `Counted ${trunkId}: complete.`
          : `Counted ${trunkId}: ${off.map((each) => `${each.counted ?? 'nothing counted'} of ${each.count} ${each.key} (${each.lot})`).join('; ')}.`;
      await this.record(manager, of, { itemId: trunkId, kind: 'trunk', data: { agrees: off.length === 0, counts } }, sentence, who);
    });
  }

  private async part<T>(manager: EntityManager, planId: string, part: string): Promise<T> {
    const [row]: { data: T }[] = await manager.query('SELECT data FROM plan_part WHERE plan_id = $1 AND part = $2', [planId, part]);
    if (!row) throw wrong('planId', planId, 'a plan with this part');
    return row.data;
  }

  private async record(
    manager: EntityManager,
    of: OfShow,
    record: Parameters<typeof keepFloorRecords>[2][number],
    sentence: string,
    who: SignedIn,
  ): Promise<void> {
    const at = this.clock.now();
    await keepFloorRecords(manager, of, [record], at, who);
    const { itemId, kind: what } = record;
    await recordEvents(manager, who, at, [{ what, itemId, tourId: of.tourId, showId: of.showId, sentence }]);
  }

  private async write(planId: string, work: (manager: EntityManager, of: OfShow) => Promise<void>): Promise<void> {
    await this.unitOfWork.run<void>(async (manager) => {
      await work(manager, await this.plans.headInForce(manager, planId));
      return ok(undefined);
    });
  }
}
