import { Inject, Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { ok } from '#kernel';
import { item as itemShape } from '#tour-file';
import { CLOCK, type Clock, today } from '../../../platform/config/config.js';
import { UnitOfWork } from '../../../platform/database/unit-of-work.js';
import { recordEvents } from '../../../platform/event-log.js';
import { BadInputError, NotAllowedError, NotFoundError } from '../../../platform/faults/fault.js';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { workOutDates } from '../item-dates.writer.js';
import { ItemRow } from '../rows.js';
import { copyRecords } from '../same-records.writer.js';

interface ToCorrect {
  readonly itemId: string;
  readonly serial: string;
  readonly reason: string;
}

/**
 * A serial that was typed wrong. What nothing is on record of changes its serial, by anybody. What was examined, planned, counted or reported keeps its
 * records under the serial that they name: the safety officer puts the right serial on file with the same records, and the wrong one is retired.
 */
@Injectable()
export class SerialService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async correct(asked: ToCorrect, who: SignedIn): Promise<void> {
    const reason = asked.reason.trim().replace(/\.$/, '');
    const { itemId } = asked;
    const serial = asked.serial.trim();
    await this.unitOfWork.run(async (manager) => {
      const item = await manager.getRepository(ItemRow).findOneBy({ id: itemId });
      if (!item) throw new NotFoundError(`The item ${itemId}`);
      await refuseWhatIsInTheWay(manager, item, serial, reason, today(this.clock));
      const isOnRecord = await hasRecords(manager, itemId);
      if (isOnRecord && who.role !== 'safety')
        throw new NotAllowedError(`${itemId} has been examined, planned or counted. Its serial is put right by the safety officer.`);
      if (isOnRecord) await putBeside(manager, item, serial);
      else await putInPlace(manager, itemId, serial);
      const at = this.clock.now();
      await moveWhatPointsAtIt(manager, itemId, serial);
      await moveWhatWaits(manager, itemId, serial, at);
      await recordEvents(manager, who, at, [
        { what: 'serial corrected', itemId, sentence: `The serial was typed wrong: it is ${serial}. ${reason}.` },
        { what: 'serial corrected', itemId: serial, sentence: `Was on file as ${itemId}, which was typed wrong. ${reason}.` },
      ]);
      await workOutDates(manager, today(this.clock), { only: isOnRecord ? [itemId, serial] : [serial] });
      return ok(undefined);
    });
  }
}

async function refuseWhatIsInTheWay(manager: EntityManager, item: ItemRow, serial: string, reason: string, day: string): Promise<void> {
  const wrong = (field: string, value: string, wanted: string) => new BadInputError([{ field, value: value.slice(0, 80), wanted }]);
  if (!itemShape.shape.id.safeParse(serial).success || serial === item.id)
    throw wrong('serial', serial, 'the serial as it stands on the thing, another than now');
  if (await manager.getRepository(ItemRow).existsBy({ id: serial })) throw wrong('serial', serial, 'a serial that is not on file yet');
  if (reason === '' || reason.length > 300) throw wrong('reason', reason, 'a sentence of 1 to 300 characters');
  const [{ waits }] = await manager.query<[{ waits: boolean }]>(
    `SELECT EXISTS (SELECT FROM proposal WHERE kind = 'record' AND subject = $1 AND state = 'proposed') AS waits`,
    [item.id],
  );
  if (waits) throw wrong('itemId', item.id, 'an item of which no record waits for the safety officer; answer that first');
  const named: { name: string }[] = await manager.query(
    `SELECT name FROM tour WHERE strpos(data::text, to_jsonb($1::text)::text) > 0
     UNION SELECT tour_name FROM booking WHERE item_id = $1 AND NOT isempty(period) AND upper(period) > $2::date ORDER BY 1`,
    [item.id, day],
  );
  if (named.length > 0)
    throw wrong('itemId', item.id, `an item that no tour holds; take it off first: ${named.map((each) => each.name).join(', ')}`);
}

const tablesOfRecords = ['examination', 'incident', 'report_file', 'floor_record', 'visit_line', 'booking'];

/** Whether anything names it that stays as it was written; plans hold their serials whole. */
async function hasRecords(manager: EntityManager, id: string): Promise<boolean> {
  const [{ found }] = await manager.query<[{ found: boolean }]>(
    `SELECT ${tablesOfRecords.map((table) => `EXISTS (SELECT FROM ${table} WHERE item_id = $1)`).join(' OR ')}
       OR EXISTS (SELECT FROM lot_split WHERE $1 IN (parent_id, child_id))
       OR EXISTS (SELECT FROM edition WHERE kind IN ('item', 'record') AND subject = $1)
       OR EXISTS (SELECT FROM proposal WHERE kind IN ('item', 'record') AND subject = $1 AND state IN ('accepted', 'declined'))
       OR EXISTS (SELECT FROM pack_plan WHERE strpos(plan::text, to_jsonb($1::text)::text) > 0) AS found`,
    [id],
  );
  return found;
}

async function putInPlace(manager: EntityManager, id: string, serial: string): Promise<void> {
  await manager.query('DELETE FROM item_record WHERE item_id = $1', [id]);
  await manager.query('UPDATE item SET id = $2, due_known = false WHERE id = $1', [id, serial]);
}

/** The same thing under its right serial, with its records; the wrong one stays with what names it, and nobody may use it. */
async function putBeside(manager: EntityManager, item: ItemRow, serial: string): Promise<void> {
  const items = manager.getRepository(ItemRow);
  const { kind, model, state, depot, count, inItem, stackCart, stackSlot, rest, isAccepted } = item;
  const leaving = { ...rest, reason: `The serial was typed wrong: it is ${serial}` };
  await items.update({ id: item.id }, { state: 'retired', stackCart: null, stackSlot: null, inItem: null, rest: leaving });
  await items.insert({ id: serial, kind, model, state, depot, count, inItem, stackCart, stackSlot, rest: rest as object, isAccepted });
  await copyRecords(manager, item.id, serial);
}

async function moveWhatPointsAtIt(manager: EntityManager, id: string, serial: string): Promise<void> {
  await manager.query('UPDATE item SET in_item = $2 WHERE in_item = $1', [id, serial]);
  await manager.query('UPDATE item SET stack_cart = $2 WHERE stack_cart = $1', [id, serial]);
}

/** What was proposed of it waits under its right serial, by who proposed it. */
async function moveWhatWaits(manager: EntityManager, id: string, serial: string, at: Date): Promise<void> {
  const open = `kind = 'item' AND subject = $1 AND state = 'proposed'`;
  await manager.query(
    `INSERT INTO proposal (kind, subject, field, wanted, was, reason, proposed_by_id, proposed_at, state)
     SELECT kind, $2, field, wanted, was, reason, proposed_by_id, proposed_at, 'proposed' FROM proposal WHERE ${open} ORDER BY id`,
    [id, serial],
  );
  await manager.query(
    `UPDATE proposal SET state = 'replaced', decided_at = $2, decided_because = 'the serial was typed wrong' WHERE ${open}`,
    [id, at],
  );
}
