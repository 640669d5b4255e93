import { randomUUID } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { type Words, tell } from '#words';
import { type BadInput, invariant, isPlainDate, unseenIn, wantedSeen } from '#kernel';
import { barredAnywhere } from '../../../planning/snapshot/judged.reader.js';
import { WORDS } from '../../../platform/config/words.js';
import { CLOCK, type Clock } from '../../../platform/config/config.js';
import { databaseErrorOf } from '../../../platform/faults/database-error.js';
import { UnitOfWork } from '../../../platform/database/unit-of-work.js';
import { recordEvents } from '../../../platform/event-log.js';
import { BadInputError } from '../../../platform/faults/fault.js';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { PlaceDaysReader } from '../../venue/place-days.reader.js';
import { dropExpiredHolds, findClashes } from './booking.repository.js';
import type { Hold, HoldInput } from './hold.types.js';
import type { BookingRefusal } from '../plan.types.js';
import { BookingRow } from '../stored/rows.js';

const mostItems = 500;
const leastHoldHours = 0.25;
const mostHoldHours = 24 * 365;

/** Holds: serials kept for somebody on some days, until the hold ends by itself, is given back, or a released plan takes its place. */
@Injectable()
export class HoldService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly dataSource: DataSource,
    private readonly places: PlaceDaysReader,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(WORDS) private readonly words: Words,
  ) {}

  /** What is held is held, whatever state it is in: it may be mended until then. What the gate says of it now stands beside it. */
  async place(given: HoldInput, who: SignedIn): Promise<{ ok: true; value: Hold } | { ok: false; error: BookingRefusal }> {
    const input = { ...given, name: given.name.trim() };
    const faults = faultsOf(input, (await this.places.now()).earliest);
    if (faults.length > 0) throw new BadInputError(faults);
    try {
      return await this.placeOnce(input, who);
    } catch (fault) {
      // The constraint has the last word; who was quicker is looked up again.
      if (!['booking_no_overlap', 'booking_item_holder_unique'].includes(databaseErrorOf(fault)?.constraint ?? '')) throw fault;
      return this.placeOnce(input, who);
    }
  }

  private placeOnce(input: HoldInput, who: SignedIn) {
    const now = this.clock.now();
    const until = new Date(now.getTime() + input.hours * 3_600_000);
    return this.unitOfWork.run<Hold, BookingRefusal>(async (manager) => {
      await lockItems(manager, input.items);
      await dropExpiredHolds(manager, now);
      await nameMustBeFree(manager, input.name);
      const clashes = await findClashes(manager, null, input.from, input.to, input.items);
      if (clashes.length > 0) {
        const first = clashes[0]!;
        const refusal = { code: 'hold-clashes', name: input.name, clash: first } as const;
        return { ok: false, error: { code: refusal.code, sentence: tell(this.words.refusals, refusal), clashes: [...clashes] } };
      }
      const id = randomUUID();
      const holder = { holderKind: 'hold', holderId: id, tourName: input.name } as const;
      await manager.getRepository(BookingRow).insert(
        input.items.map((itemId) => ({
          id: randomUUID(),
          itemId,
          ...holder,
          period: `[${input.from},${input.to}]`,
          count: null,
          holdUntil: until,
        })),
      );
      const sentence = `Held for ${input.name} from ${input.from} to ${input.to}, until ${until.toISOString().slice(0, 16).replace('T', ' ')}.`;
      await recordEvents(
        manager,
        who,
        now,
        input.items.map((itemId) => ({ what: 'held', itemId, sentence })),
      );
      const { name, from, to, items } = input;
      const [held] = await this.judged(manager, [{ id, name, from, to, items: [...items], until: until.toISOString() }]);
      invariant(held !== undefined, 'one hold is judged as one');
      return { ok: true, value: held };
    }, 'READ COMMITTED');
  }

  /** Gives a hold back; says how many items were in it. */
  async giveBack(id: string, who: SignedIn): Promise<number> {
    const outcome = await this.unitOfWork.run<number>(async (manager) => {
      const held = await manager.getRepository(BookingRow).find({ where: { holderKind: 'hold', holderId: id } });
      if (held.length === 0) throw new BadInputError([{ field: 'id', value: id.slice(0, 80), wanted: 'a hold in force' }]);
      await manager.getRepository(BookingRow).remove(held);
      await recordEvents(
        manager,
        who,
        this.clock.now(),
        held.map((row) => ({ what: 'given back', itemId: row.itemId, sentence: `The hold for ${row.tourName} was given back.` })),
      );
      return { ok: true, value: held.length };
    });
    return outcome.ok ? outcome.value : 0;
  }

  /** Holds that are in force, the one that ends first at the top. */
  async list(): Promise<Hold[]> {
    const rows: { id: string; name: string; from: string; to: string; until: Date; items: string[] }[] = await this.dataSource.query(
      `SELECT holder_id AS id, min(tour_name) AS name, min(lower(period))::text AS "from", (max(upper(period)) - 1)::text AS "to", min(hold_until) AS until,
         array_agg(item_id ORDER BY item_id) AS items
       FROM booking WHERE holder_kind = 'hold' AND hold_until > $1 GROUP BY holder_id ORDER BY min(hold_until), min(tour_name), holder_id`,
      [this.clock.now()],
    );
    return this.judged(
      this.dataSource.manager,
      rows.map((row) => ({ ...row, until: row.until.toISOString() })),
    );
  }

  private async judged(manager: EntityManager, holds: readonly Omit<Hold, 'barred'>[]): Promise<Hold[]> {
    const barred = await barredAnywhere(manager, holds);
    return holds.map((hold, index) => ({
      ...hold,
      barred: (barred[index] ?? []).map(({ item, reason }) => `${item}: ${tell(this.words.against, reason)}`),
    }));
  }
}

/** Two holds of one name, or a hold with the name of a tour, could not be told apart by people. */
async function nameMustBeFree(manager: EntityManager, name: string): Promise<void> {
  const rows: unknown[] = await manager.query(
    'SELECT 1 FROM booking WHERE tour_name = $1 UNION ALL SELECT 1 FROM tour WHERE name = $1 LIMIT 1',
    [name],
  );
  if (rows.length > 0) throw new BadInputError([{ field: 'name', value: name, wanted: 'a name that no other hold and no tour has' }]);
}

/** In the order of their names, so that two who want the same never wait for one another in a ring. */
async function lockItems(manager: EntityManager, items: readonly string[]): Promise<void> {
  const rows: { id: string; count: number | null }[] = await manager.query(
    'SELECT id, count FROM item WHERE id = ANY($1) ORDER BY id FOR NO KEY UPDATE',
    [items],
  );
  const known = new Map(rows.map((row) => [row.id, row]));
  const faults = items.flatMap((id, index): BadInput[] => {
    const row = known.get(id);
    if (!row) return [{ field: `items[${index}]`, value: id, wanted: 'the serial of an item on file' }];
    if (row.count === null) return [];
    return [{ field: `items[${index}]`, value: id, wanted: 'a serial, not a batch: batches are booked with a released plan' }];
  });
  if (faults.length > 0) throw new BadInputError(faults);
}

function faultsOf({ name, from, to, hours, items }: HoldInput, day: string): BadInput[] {
  const faults: BadInput[] = [];
  const found = unseenIn(name);
  if (name === '' || name.length > 80) faults.push({ field: 'name', value: name.slice(0, 80), wanted: 'a name of 1 to 80 characters' });
  else if (found !== undefined) faults.push({ field: 'name', value: name, wanted: wantedSeen(found) });
  for (const [field, value] of Object.entries({ from, to }))
    if (!isPlainDate(value)) faults.push({ field, value: value.slice(0, 40), wanted: 'a day that exists, written YYYY-MM-DD' });
  if (faults.length === 0 && to < from) faults.push({ field: 'to', value: to, wanted: `a day no earlier than ${from}` });
  if (faults.length === 0 && to < day) faults.push({ field: 'to', value: to, wanted: `a day no earlier than today, ${day}` });
  if (!(hours >= leastHoldHours && hours <= mostHoldHours))
    faults.push({ field: 'hours', value: hours, wanted: `${leastHoldHours} to ${mostHoldHours} hours` });
  if (items.length === 0 || items.length > mostItems)
    faults.push({ field: 'items', value: items.length, wanted: `1 to ${mostItems} serials` });
  items.forEach((id, index) => {
    if (items.indexOf(id) !== index) faults.push({ field: `items[${index}]`, value: id, wanted: 'each serial once' });
  });
  return faults;
}
