import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { RowSwap } from '#pack-plan';
import { CLOCK, type Clock } from '../../platform/config/config.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { toldAnswer } from '../../planning/jobs/job-outcome.js';
import { Jobs } from '../../planning/jobs/jobs.js';
import { dayOfShow } from '../venue/show-day.reader.js';
import { SOLVERS, type Solvers, taskFile } from '../../planning/solve/solver-pool.js';
import { PlanReader } from '../plan/stored/plan.reader.js';
import type { Wish } from './loading-decisions.js';
import type { LoadingSubject } from './loading.task.js';
import type { RowSwapSubject } from './row-swap.task.js';

const rowSwapTask = taskFile(import.meta.url, './row-swap.task.js');

/** What is wanted of the trucks: a job that decides it and plans the trucks around it. Released plans never change. */
@Injectable()
export class LoadingService {
  constructor(
    private readonly jobs: Jobs,
    private readonly plans: PlanReader,
    private readonly dataSource: DataSource,
    @Inject(SOLVERS) private readonly solvers: Solvers,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  wish(planId: string, wish: Wish, who: SignedIn): Promise<string> {
    return this.jobs.ask(async (manager) => {
      const { tourId, showId } = await this.plans.headInForce(manager, planId);
      const day = await dayOfShow(manager, this.clock, tourId, showId);
      const subject: LoadingSubject = { planId, wish, who: who.name, today: day };
      return { kind: 'loading', tourId, showId, subject, urgent: true, askedBy: who };
    });
  }

  /** What the swap would do, without doing it. */
  async lookAtSwap(subject: RowSwapSubject): Promise<RowSwap> {
    await this.plans.headInForce(this.dataSource.manager, subject.planId);
    return toldAnswer(await this.solvers.look<RowSwap>({ file: rowSwapTask, subject }));
  }
}
