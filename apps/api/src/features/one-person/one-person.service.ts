import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/config/config.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { recordEvents } from '../../platform/event-log.js';
import { BadInputError, NotAllowedError } from '../../platform/faults/fault.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { onePersonTimes } from './one-person.reader.js';
import { OnePersonRow } from './rows.js';

/** The setting of a house with one safety officer: what waits for a second person is accepted by that one, with a reason. Off from the start. */
@Injectable()
export class OnePersonService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async set(isOn: boolean, reason: string, me: SignedIn): Promise<void> {
    const because = reason.trim().replace(/\.$/, '');
    if (because === '' || because.length > 300)
      throw new BadInputError([{ field: 'reason', value: reason.slice(0, 80), wanted: 'why, in 1 to 300 characters' }]);
    await this.unitOfWork.run(async (manager) => {
      const [now] = await onePersonTimes(manager);
      const holds = now !== undefined && now.until === null;
      if (holds === isOn)
        throw new BadInputError([
          { field: 'isOn', value: isOn, wanted: isOn ? 'nothing: it is on already' : 'nothing: two pairs of eyes are asked for already' },
        ]);
      const others: { name: string }[] = await manager.query(
        `SELECT name FROM account WHERE role = 'safety' AND disabled_at IS NULL AND id <> $1 ORDER BY name`,
        [me.id],
      );
      if (isOn && others.length > 0)
        throw new NotAllowedError(
          `This is for a house with one safety officer. ${others.map((each) => each.name).join(', ')} may be the second pair of eyes.`,
        );
      const setAt = this.clock.now();
      await manager.getRepository(OnePersonRow).insert({ isOn, reason: because, setById: me.id, setAt });
      const sentence = isOn
        ? `One person judges alone in this house from now on: ${because}. What would wait for a second person ${me.name} accepts with a reason, and every sheet says so.`
        : `Two pairs of eyes judge in this house again: ${because}.`;
      await recordEvents(manager, me, setAt, [{ what: 'one person', sentence }]);
      return { ok: true, value: undefined };
    });
  }
}
