import { Injectable } from '@nestjs/common';
import { type PlanDifference, differenceBetween } from '#pack-plan';
import { PlanPartsQuery } from './plan-parts.query.js';
import type { PlanDifferenceView } from './plan.types.js';

/** What one plan of a show has otherwise than another. */
@Injectable()
export class PlanDifferenceQuery {
  constructor(private readonly parts: PlanPartsQuery) {}

  async difference(fromId: string, toId: string): Promise<PlanDifferenceView> {
    const [from, to] = await Promise.all([this.parts.whole(fromId), this.parts.whole(toId)]);
    return differenceViewOf(differenceBetween(from, to));
  }
}

export const differenceViewOf = ({ sentences, boxes, hangsChanged }: PlanDifference): PlanDifferenceView => ({
  sentences: [...sentences],
  boxes: [...boxes],
  hangsChanged: [...hangsChanged],
});
