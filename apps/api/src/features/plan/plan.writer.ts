import { randomUUID } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { canonicalJson } from '#kernel';
import { type PackPlan, changedInputs, moveKey, rowKey, tickText } from '#pack-plan';
import type { TourFile } from '#tour-file';
import { CLOCK, type Clock } from '../../platform/config.js';
import { recordEvents } from '../../platform/event-log.js';
import { noteFresh } from './plan-freshness.reader.js';
import { PackPlanRow } from './rows.js';
import { carryTicks, readTicks } from './tick.repository.js';

/** Drafts of a show, written inside the caller's unit of work. */
@Injectable()
export class PlanWriter {
  constructor(@Inject(CLOCK) private readonly clock: Clock) {}

  /** The draft of the show, in the place of an older draft; gives its id. Rows that stand as in the plan `from` keep their ticks. */
  async putDraft(
    manager: EntityManager,
    plan: PackPlan,
    who: string,
    from?: { readonly id: string; readonly plan: PackPlan },
  ): Promise<string> {
    const id = randomUUID();
    const at = { tourId: plan.tour.id, showId: plan.show.id };
    const rows = manager.getRepository(PackPlanRow);
    const ticks = from ? await readTicks(manager, from.id) : [];
    await rows.delete({ ...at, state: 'draft' });
    await rows.insert({
      id,
      ...at,
      state: 'draft',
      revision: null,
      madeAt: this.clock.now(),
      madeBy: who,
      releasedAt: null,
      releasedBy: null,
      releasedDespite: null,
      plan: plan as object,
    });
    await noteFresh(manager, id);
    if (from) await carryTicks(manager, ticks, unchangedTicks(from.plan, plan), id);
    await recordEvents(manager, { name: who }, this.clock.now(), [
      { what: 'planned', tourId: at.tourId, sentence: `Made a draft plan of ${plan.show.name}.` },
    ]);
    return id;
  }

  /** Puts in a plan that was made from `file` as it was a while ago, where it still holds and is better; tells in words what came of it. */
  async replaceDraft(manager: EntityManager, file: TourFile, showId: string, plan: PackPlan, who: string): Promise<string> {
    if (changedInputs(plan, file).length > 0) return 'The inputs changed while the search went on: its result was put away. Search again.';
    const at = { tourId: file.tour.id, showId };
    const rows = manager.getRepository(PackPlanRow);
    const now = (await rows.findOneBy({ ...at, state: 'draft' })) ?? (await rows.findOneBy({ ...at, state: 'released' }));
    const metres = (each: PackPlan) => each.truck.trucks.reduce((sum, truck) => sum + truck.usedLengthMm, 0) / 1000;
    const moves = plan.carts.boxMoves - (now?.plan.carts.boxMoves ?? 0);
    if (now && changedInputs(now.plan, file).length === 0 && moves >= 0 && (moves > 0 || metres(plan) >= metres(now.plan)))
      return `No shorter load was found: ${metres(now.plan).toFixed(2)} m are used as before.`;
    await this.putDraft(manager, plan, who);
    if (now && moves < 0) return `The draft now needs ${plan.carts.boxMoves} box moves instead of ${now.plan.carts.boxMoves}.`;
    return `The draft now uses ${metres(plan).toFixed(2)} m of truck${now ? ` instead of ${metres(now.plan).toFixed(2)} m` : ''}.`;
  }
}

/** What may stay ticked: rows whose pieces stand exactly as before, and box moves where the list of them is the same. */
function unchangedTicks(before: PackPlan, after: PackPlan): ReadonlySet<string> {
  const rowsOf = (plan: PackPlan) =>
    plan.truck.trucks.flatMap((truck) =>
      truck.rows.map((row) => {
        const pieces = truck.placements.filter((each) => row.pieces.includes(each.id));
        return [
          tickText(rowKey(truck.id, row.number)),
          canonicalJson(pieces.map(({ id, xMm, yMm, zMm, turned }) => ({ id, xMm, yMm, zMm, turned }))),
        ] as const;
      }),
    );
  const was = new Map(rowsOf(before));
  const moves =
    canonicalJson(before.carts.moves) === canonicalJson(after.carts.moves)
      ? after.carts.moves.map((each) => tickText(moveKey(each.number)))
      : [];
  return new Set([...rowsOf(after).flatMap(([what, pieces]) => (was.get(what) === pieces ? [what] : [])), ...moves]);
}
