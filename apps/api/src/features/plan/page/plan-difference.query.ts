import { Inject, Injectable } from '@nestjs/common';
import { type PlanDifference, differenceBetween } from '#pack-plan';
import type { Words } from '#words';
import { WORDS } from '../../../platform/config/words.js';
import { PlanPartsQuery } from './plan-parts.query.js';
import type { PlanDifferenceView } from '../plan.types.js';

/** What one plan of a show has otherwise than another. */
@Injectable()
export class PlanDifferenceQuery {
  constructor(
    private readonly parts: PlanPartsQuery,
    @Inject(WORDS) private readonly words: Words,
  ) {}

  async difference(fromId: string, toId: string): Promise<PlanDifferenceView> {
    const [from, to] = await Promise.all([this.parts.whole(fromId), this.parts.whole(toId)]);
    return differenceViewOf(differenceBetween(from, to, this.words));
  }
}

const differenceViewOf = ({ sentences, boxes, hangsChanged }: PlanDifference): PlanDifferenceView => ({
  sentences: [...sentences],
  boxes: [...boxes],
  hangsChanged: [...hangsChanged],
});
