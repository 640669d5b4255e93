import { Worker } from 'node:worker_threads';
import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { PackPlan } from '#pack-plan';
import type { TourFile } from '#tour-file';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { JobQueue } from '../../platform/job-queue.js';
import { PlanWriter } from '../plan/plan.writer.js';
import { TourFileReader } from '../../planning/tour-file.reader.js';
import { SearchRow } from './rows.js';
import { searchQueue } from './search.service.js';

/** The built thread, also when this file runs from its source under test: a thread has no transpiler. */
const threadFile = new URL(
  './search-thread.js',
  import.meta.url.replace(/(\/dist)?\/apps\/api\/src\/features\/search\/[^/]*$/, '/dist/apps/api/src/features/search/'),
);

/** Orders of the pieces that a longer search tries. */
const truckWork = 400;

/** Takes searches from the queue, one at a time: one load, one plan made in a thread, one save. */
@Injectable()
export class SearchWorker {
  constructor(
    private readonly queue: JobQueue,
    private readonly dataSource: DataSource,
    private readonly unitOfWork: UnitOfWork,
    private readonly reader: TourFileReader,
    private readonly plans: PlanWriter,
  ) {}

  async listen(): Promise<void> {
    await this.queue.work<{ searchId: string }>(searchQueue, ({ searchId }) => this.search(searchId));
  }

  private async search(id: string): Promise<void> {
    const rows = this.dataSource.getRepository(SearchRow);
    const row = await rows.findOneBy({ id });
    // A search that was running when its worker died is tried again from the start.
    if (!row || (row.state !== 'waiting' && row.state !== 'running')) return;
    await rows.update({ id, state: 'waiting' }, { state: 'running' });
    try {
      const file = await this.reader.load(this.dataSource.manager, row.tourId);
      const plan = await this.planInThread(id, file, row.showId);
      if (plan) await this.save(row, plan);
    } catch (fault) {
      await rows.update({ id }, { state: 'failed', sentence: `The search ended with a fault: ${(fault as Error).message}` });
      throw fault;
    }
  }

  /** undefined when somebody stopped it. */
  private planInThread(id: string, file: TourFile, showId: string): Promise<PackPlan | undefined> {
    const thread = new Worker(threadFile, { workerData: { file, showId, truckWork } });
    let progress = 0;
    return new Promise((resolve, reject) => {
      const look = setInterval(() => {
        this.tell(id, progress).then(
          (wanted) => {
            if (!wanted) end(() => resolve(undefined));
          },
          (fault: Error) => end(() => reject(fault)),
        );
      }, 500);
      const end = (answer: () => void) => {
        clearInterval(look);
        void thread.terminate().then(answer);
      };
      thread.on('message', (said: number | PackPlan) => {
        if (typeof said === 'number') progress = said;
        else end(() => resolve(said));
      });
      thread.once('error', (fault) => end(() => reject(fault)));
    });
  }

  /** Writes the progress; false when the search is no longer wanted. */
  private async tell(id: string, progress: number): Promise<boolean> {
    const { affected } = await this.dataSource.getRepository(SearchRow).update({ id, state: 'running' }, { progress });
    return affected === 1;
  }

  private async save(row: SearchRow, plan: PackPlan): Promise<void> {
    await this.unitOfWork.run(async (manager) => {
      const rows = manager.getRepository(SearchRow);
      if ((await rows.findOneBy({ id: row.id }))?.state !== 'running') return { ok: true, value: undefined };
      const file = await this.reader.load(manager, row.tourId);
      const sentence = await this.plans.replaceDraft(manager, file, row.showId, plan, row.askedBy);
      await rows.update({ id: row.id }, { state: 'done', progress: 1, sentence });
      return { ok: true, value: undefined };
    });
  }
}
