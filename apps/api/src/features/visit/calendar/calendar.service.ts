import { createHash, randomBytes, randomUUID } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import { DataSource, IsNull } from 'typeorm';
import type { CalendarEntry } from '#inspection-calendar';
import { CLOCK, type Clock, today } from '../../../platform/config/config.js';
import { UnitOfWork } from '../../../platform/database/unit-of-work.js';
import { recordEvents } from '../../../platform/event-log.js';
import { BadInputError, NotFoundError } from '../../../platform/faults/fault.js';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { ItemDates } from '../../register/item-dates.writer.js';
import { CalendarFeedRow } from '../rows.js';
import { type WantedEntry, wantedEntries } from './wanted-entries.js';

/** An address is a secret of 256 bits; the hash alone is kept. */
const hashOf = (token: string): string => createHash('sha256').update(token).digest('hex');

// What differs from what was sent last counts up; what is no longer wanted and lies ahead is cancelled, and comes back under its own id.
const putEntries = `INSERT INTO calendar_entry (uid, depot, on_day, sequence, content, changed_at)
SELECT uid, depot, on_day, 0, content, $5 FROM unnest($1::text[], $2::text[], $3::date[], $4::jsonb[]) given (uid, depot, on_day, content)
ON CONFLICT (uid) DO UPDATE SET depot = excluded.depot, on_day = excluded.on_day, content = excluded.content, is_cancelled = false, changed_at = excluded.changed_at, sequence = calendar_entry.sequence + 1
WHERE (calendar_entry.depot, calendar_entry.on_day, calendar_entry.content, calendar_entry.is_cancelled) IS DISTINCT FROM (excluded.depot, excluded.on_day, excluded.content, false)`;
const cancelOthers = `UPDATE calendar_entry SET is_cancelled = true, sequence = sequence + 1, changed_at = $3
WHERE NOT is_cancelled AND (on_day >= $2 OR uid LIKE 'incident-%') AND uid <> ALL ($1::text[])`;
const entriesOf = `SELECT uid, on_day::text AS on, sequence, content, is_cancelled AS "isCancelled", changed_at AS "changedAt" FROM calendar_entry
WHERE on_day >= $1::date - 60 AND ($2::text IS NULL OR depot IS NULL OR depot = $2) ORDER BY on_day, uid LIMIT 10000`;

export interface CalendarOfMine {
  readonly id: string;
  readonly depot: string | null;
  readonly madeAt: Date;
}

/** Calendars that people subscribe to. */
@Injectable()
export class CalendarService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly dataSource: DataSource,
    private readonly dates: ItemDates,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  mine(who: SignedIn): Promise<CalendarOfMine[]> {
    return this.dataSource.getRepository(CalendarFeedRow).find({
      ...{
        where: { accountId: who.id, withdrawnAt: IsNull() },
        order: { madeAt: 'DESC' },
        select: { id: true, depot: true, madeAt: true },
      },
    });
  }

  /** A new address; those that this person had before are withdrawn. It is told this once. */
  async renew(depot: string | null, who: SignedIn): Promise<string> {
    const token = randomBytes(32).toString('base64url');
    await this.unitOfWork.run(async (manager) => {
      if (depot !== null) {
        const [found]: object[] = await manager.query('SELECT FROM item WHERE depot = $1 LIMIT 1', [depot]);
        if (!found) throw new BadInputError([{ field: 'depot', value: depot.slice(0, 80), wanted: 'a depot of the register' }]);
      }
      const rows = manager.getRepository(CalendarFeedRow);
      const now = this.clock.now();
      await rows.update({ accountId: who.id, withdrawnAt: IsNull() }, { withdrawnAt: now });
      await rows.insert({ id: randomUUID(), accountId: who.id, tokenHash: hashOf(token), depot, madeAt: now, withdrawnAt: null });
      await recordEvents(manager, who, now, [{ what: 'calendar', sentence: 'Made an address for a calendar.' }]);
      return { ok: true, value: undefined };
    });
    return token;
  }

  async withdraw(id: string, who: SignedIn): Promise<void> {
    await this.unitOfWork.run(async (manager) => {
      const rows = manager.getRepository(CalendarFeedRow);
      const { affected } = await rows.update({ id, accountId: who.id, withdrawnAt: IsNull() }, { withdrawnAt: this.clock.now() });
      if (affected === 0) throw new NotFoundError('This calendar');
      await recordEvents(manager, who, this.clock.now(), [{ what: 'calendar', sentence: 'Withdrew the address of a calendar.' }]);
      return { ok: true, value: undefined };
    });
  }

  /** What stands under an address now; undefined where the address opens nothing. */
  async entries(token: string): Promise<readonly CalendarEntry[] | undefined> {
    const [feed]: { depot: string | null }[] = await this.dataSource.query(
      `SELECT depot FROM calendar_feed JOIN account ON account.id = calendar_feed.account_id
       WHERE token_hash = $1 AND withdrawn_at IS NULL AND account.disabled_at IS NULL`,
      [hashOf(token)],
    );
    if (!feed) return undefined;
    const day = today(this.clock);
    await this.dates.workOut(day);
    await this.renewEntries(day);
    const rows: (Omit<CalendarEntry, keyof WantedEntry['content']> & Pick<WantedEntry, 'content'>)[] = await this.dataSource.query(
      entriesOf,
      [day, feed.depot],
    );
    return rows.map(({ content, ...row }) => ({ ...row, ...content }));
  }

  private async renewEntries(day: string): Promise<void> {
    await this.unitOfWork.run(async (manager) => {
      const wanted = await wantedEntries(manager, day);
      const now = this.clock.now();
      await manager.query(putEntries, [
        wanted.map((each) => each.uid),
        wanted.map((each) => each.depot),
        wanted.map((each) => each.on),
        wanted.map((each) => JSON.stringify(each.content)),
        now,
      ]);
      await manager.query(cancelOthers, [wanted.map((each) => each.uid), day, now]);
      return { ok: true, value: undefined };
    });
  }
}
