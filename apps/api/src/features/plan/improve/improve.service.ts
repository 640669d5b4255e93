import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { type Result, ok, refuse } from '#kernel';
import { changedInputs } from '#pack-plan';
import type { ImprovementFact, InputChange } from '#trade';
import { CLOCK, type Clock } from '../../../platform/config/config.js';
import { UnitOfWork } from '../../../platform/database/unit-of-work.js';
import { NotFoundError } from '../../../platform/faults/fault.js';
import type { Author } from '../../../platform/sign-in/person.js';
import { writeOut } from '../../../planning/solve/made-plan.js';
import { TourFileReader } from '../../../planning/snapshot/tour-file.reader.js';
import { PlanReader } from '../stored/plan.reader.js';
import { PlanWriter } from '../stored/plan.writer.js';
import { PlanImprovementRow } from '../stored/rows.js';
import { improvementFact, putImprovement } from './improvement.repository.js';

type Taken = Result<string, readonly InputChange[]>;

/** Better plans that the house found by itself: told of, and taken in when somebody says so. */
@Injectable()
export class ImproveService {
  constructor(
    private readonly dataSource: DataSource,
    private readonly unitOfWork: UnitOfWork,
    private readonly plans: PlanReader,
    private readonly reader: TourFileReader,
    private readonly writer: PlanWriter,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  fact(planId: string): Promise<ImprovementFact | null> {
    return improvementFact(this.dataSource.manager, planId);
  }

  /** The better plan as the draft of the show; refused with what has changed since it was made. Gives the draft's id. */
  take(planId: string, who: Author): Promise<Taken> {
    return this.unitOfWork.run<string, readonly InputChange[]>((manager) => this.takeIn(manager, planId, who));
  }

  private async takeIn(manager: EntityManager, planId: string, who: Author): Promise<Taken> {
    const { tourId } = await this.plans.headInForce(manager, planId);
    const found = await manager.getRepository(PlanImprovementRow).findOneBy({ planId });
    if (!found?.better) throw new NotFoundError('A shorter list for this plan');
    const file = await this.reader.load(manager, tourId);
    const changes = changedInputs(found.better, file);
    if (changes.length > 0) return refuse(changes);
    const { plan } = await this.plans.one(manager, planId);
    const { open, ...made } = writeOut(found.better, file, plan);
    const draftId = await this.writer.putDraft(manager, { ...made, open: null }, who, planId);
    // The work that found it is spent: as much again would find the same.
    if (open) await putImprovement(manager, draftId, { fact: { code: 'not-shorter', ...open }, better: null }, this.clock.now());
    return ok(draftId);
  }
}
