import { Injectable } from '@nestjs/common';
import { ok } from '#kernel';
import { UnitOfWork } from '../../../platform/database/unit-of-work.js';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { LotWriter, type Split, type ToSplit } from './lot.writer.js';

/** Takes pieces out of a batch, one act. */
@Injectable()
export class LotService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly lots: LotWriter,
  ) {}

  async split(asked: ToSplit, who: SignedIn): Promise<Split> {
    const outcome = await this.unitOfWork.run<Split>(async (manager) => ok(await this.lots.split(manager, asked, who)));
    if (!outcome.ok) throw new Error('a split is never refused');
    return outcome.value;
  }
}
