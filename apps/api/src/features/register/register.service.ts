import { createHash, randomUUID } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { isPlainDate } from '#kernel';
import { CLOCK, type Clock, latestDay } from '../../platform/config/config.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { recordEvents } from '../../platform/event-log.js';
import { BadInputError, NotFoundError } from '../../platform/faults/fault.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { ExaminationWriter } from './examination.writer.js';
import { insertIncident } from './kit.writer.js';
import { ItemRow, ReportFileRow } from './rows.js';
import { readStack } from './stack.writer.js';

/** What people do to single items; every act is an event of the item. */
@Injectable()
export class RegisterService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly examinations: ExaminationWriter,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  /** `supersedes` names the record that this one corrects; both stay on file. */
  async recordExamination(id: string, examination: unknown, supersedes: string | null, reason: string, who: SignedIn): Promise<void> {
    await this.change(id, async (manager) => {
      await this.examinations.record(manager, { itemId: id, examination, supersedes, reason }, who);
    });
  }

  /** Keeps a report as it was handed in; gives its id. The same file under the same name is kept once an item. */
  keepReport(itemId: string, name: string, type: string, bytes: Buffer, who: SignedIn): Promise<string> {
    return this.keepFile('report', itemId, name, type, bytes, who);
  }

  /** The same for a picture of what is wrong with it. */
  keepPicture(itemId: string, name: string, type: string, bytes: Buffer, who: SignedIn): Promise<string> {
    return this.keepFile('picture', itemId, name, type, bytes, who);
  }

  private async keepFile(
    what: 'report' | 'picture',
    itemId: string,
    name: string,
    type: string,
    bytes: Buffer,
    who: SignedIn,
  ): Promise<string> {
    const file = required('name', name);
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    let id: string = randomUUID();
    await this.change(itemId, async (manager) => {
      const rows = manager.getRepository(ReportFileRow);
      const known = await rows.findOne({ select: { id: true }, where: { itemId, sha256, name: file, type } });
      if (known) {
        id = known.id;
        return;
      }
      await rows.insert({ id, itemId, name: file, type, bytes, sha256, keptBy: who.name, keptById: who.id, keptAt: this.clock.now() });
      await this.say(manager, who, itemId, `${what} kept`, `Kept the ${what} file ${file}, SHA-256 ${sha256}.`);
    });
    return id;
  }

  async quarantine(id: string, reason: string, who: SignedIn): Promise<void> {
    const why = required('reason', reason);
    await this.change(id, async (manager, item) => {
      if (item.state === 'retired') throw new BadInputError([{ field: 'itemId', value: id, wanted: 'an item that is not retired' }]);
      await manager.getRepository(ItemRow).update({ id }, { state: 'quarantined', rest: { ...item.rest, reason: why } });
      await this.say(manager, who, id, 'quarantined', `Quarantined: ${why}.`);
    });
  }

  async releaseFromQuarantine(id: string, reason: string, who: SignedIn): Promise<void> {
    const why = required('reason', reason);
    await this.change(id, async (manager, item) => {
      if (item.state !== 'quarantined')
        throw new BadInputError([{ field: 'itemId', value: id, wanted: `an item in quarantine; ${id} is ${item.state}` }]);
      const { reason: _reason, ...rest } = item.rest;
      await manager.getRepository(ItemRow).update({ id }, { state: 'in service', rest: rest as object });
      await this.say(manager, who, id, 'released', `Released from quarantine: ${why}.`);
    });
  }

  async recordIncident(id: string, on: string, what: string, who: SignedIn): Promise<void> {
    const sentence = required('what', what);
    if (!isPlainDate(on) || on > latestDay(this.clock))
      throw new BadInputError([{ field: 'on', value: on, wanted: 'a day that exists, no later than today, written YYYY-MM-DD' }]);
    await this.change(id, async (manager) => {
      await insertIncident(manager, id, on, sentence);
      await this.say(manager, who, id, 'incident', `${sentence}, on ${on}. Out of use until it is examined.`);
    });
  }

  /** The boxes of a cart as somebody read them, top first; the floor takes what stood there before. */
  async setStack(cart: string, serials: readonly string[], who: SignedIn): Promise<void> {
    await this.change(cart, (manager) => readStack(manager, cart, serials, who, this.clock.now()));
  }

  private async change(id: string, work: (manager: EntityManager, item: ItemRow) => Promise<void>): Promise<void> {
    await this.unitOfWork.run(async (manager) => {
      const item = await manager.getRepository(ItemRow).findOneBy({ id });
      if (!item) throw new NotFoundError(`The item ${id}`);
      await work(manager, item);
      return { ok: true, value: undefined };
    });
  }

  private say(manager: EntityManager, who: SignedIn, itemId: string, what: string, sentence: string): Promise<void> {
    return recordEvents(manager, who, this.clock.now(), [{ what, sentence, itemId }]);
  }
}

function required(field: string, text: string): string {
  const trimmed = text.trim().replace(/\.$/, '');
  if (trimmed === '' || trimmed.length > 300)
    throw new BadInputError([{ field, value: text.slice(0, 80), wanted: 'a sentence of 1 to 300 characters' }]);
  return trimmed;
}
