import { randomUUID } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { CLOCK, type Clock } from '../../platform/config.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { recordEvents } from '../../platform/event-log.js';
import { NotFoundError } from '../../platform/graphql/fault.js';
import { JobQueue } from '../../platform/job-queue.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { SearchRow } from './rows.js';

export const searchQueue = 'search';

/** Asks for, tells of and stops a longer search; the worker does it. */
@Injectable()
export class SearchService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly dataSource: DataSource,
    private readonly queue: JobQueue,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  /** The search that waits or runs for this show already, or a new one: one result however often it is asked for. */
  async start(tourId: string, showId: string, who: SignedIn): Promise<SearchRow> {
    await this.queue.open(searchQueue);
    const outcome = await this.unitOfWork.run<SearchRow>(async (manager) => {
      const rows = manager.getRepository(SearchRow);
      const going = await rows.findOne({ where: ['waiting' as const, 'running' as const].map((state) => ({ tourId, showId, state })) });
      if (going) return { ok: true, value: going };
      const row: Omit<SearchRow, 'number'> = {
        id: randomUUID(),
        tourId,
        showId,
        state: 'waiting',
        progress: 0,
        sentence: '',
        askedBy: who.name,
        askedAt: this.clock.now(),
      };
      await rows.insert(row);
      await this.queue.send(manager, searchQueue, { searchId: row.id });
      await recordEvents(manager, who, row.askedAt, [{ what: 'asked', tourId, sentence: `Asked for a longer search of the trucks.` }]);
      return { ok: true, value: await rows.findOneByOrFail({ id: row.id }) };
    });
    if (!outcome.ok) throw new Error('a search is never refused');
    return outcome.value;
  }

  /** The newest search of a show. */
  async latest(tourId: string, showId: string): Promise<SearchRow | null> {
    return this.dataSource.getRepository(SearchRow).findOne({ where: { tourId, showId }, order: { number: 'DESC' } });
  }

  /** The worker looks at the state twice a second and lets go. */
  async stop(id: string, who: SignedIn): Promise<SearchRow> {
    const outcome = await this.unitOfWork.run<SearchRow>(async (manager) => {
      const rows = manager.getRepository(SearchRow);
      for (const state of ['waiting', 'running'] as const)
        await rows.update({ id, state }, { state: 'stopped', sentence: `Stopped by ${who.name}; the plan is as it was.` });
      const row = await rows.findOneBy({ id });
      if (!row) throw new NotFoundError(`The search ${id}`);
      return { ok: true, value: row };
    });
    if (!outcome.ok) throw new Error('stopping is never refused');
    return outcome.value;
  }
}
