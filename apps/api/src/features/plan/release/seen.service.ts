import { Inject, Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { CLOCK, type Clock } from '../../../platform/config/config.js';
import { UnitOfWork } from '../../../platform/database/unit-of-work.js';
import { recordEvents } from '../../../platform/event-log.js';
import { BadInputError, NotAllowedError, NotFoundError } from '../../../platform/faults/fault.js';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { byOnePerson, judgesAlone } from '../../one-person/one-person.reader.js';
import { BarredActAnswerRow, BarredActRow } from '../stored/barred-act.rows.js';

const whyNotOwn = 'You did this yourself: nobody signs twice in two roles. Another safety officer, or a deputy, looks at it.';

/** What was done although barred is looked at by the safety officer or a deputy, who says what was found: once, and never by who did it. */
@Injectable()
export class SeenService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async see(tourId: string, id: string, reason: string, who: SignedIn): Promise<void> {
    const because = reason.trim().replace(/\.$/, '');
    if (because === '' || because.length > 300)
      throw new BadInputError([{ field: 'because', value: because.slice(0, 80), wanted: 'a sentence of 1 to 300 characters' }]);
    await this.unitOfWork.run(async (manager) => {
      const act = await actOf(manager, tourId, id);
      const isOwn = act.doneById === who.id;
      if (isOwn && !(await judgesAlone(manager, who))) throw new NotAllowedError(whyNotOwn);
      const answeredAt = this.clock.now();
      const inserted = await manager
        .createQueryBuilder()
        .insert()
        .into(BarredActAnswerRow)
        .values({ actId: act.id, because, answeredById: who.id, answeredForId: who.deputyOf ?? null, answeredAt })
        .orIgnore()
        .returning('act_id')
        .execute();
      if ((inserted.raw as unknown[]).length === 0)
        throw new NotAllowedError('This was looked at already: what was said of it stands in the notes of the show.');
      const sentence = `Seen what was done although barred, ${act.words}, because: ${because}.${isOwn ? byOnePerson : ''}`;
      await recordEvents(manager, who, answeredAt, [{ what: 'seen', tourId, sentence }]);
      return { ok: true, value: undefined };
    });
  }
}

async function actOf(manager: EntityManager, tourId: string, id: string): Promise<BarredActRow> {
  const act = /^[1-9]\d{0,17}$/.test(id) ? await manager.getRepository(BarredActRow).findOneBy({ id, tourId }) : null;
  if (!act) throw new NotFoundError('What was done although barred');
  return act;
}
