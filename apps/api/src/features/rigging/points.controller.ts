import { Controller, Get, Param, Res } from '@nestjs/common';
import type { Response } from 'express';
import { strToU8, zipSync } from 'fflate';
import { DataSource } from 'typeorm';
import { pointRows, scenePoints } from '#drawings';
import { writeCsv } from '#kernel';
import { AllowEverybody } from '../../platform/sign-in/signed-in.js';
import { PlanReader } from '../plan/stored/plan.reader.js';
import { UuidArgument } from '../../platform/graphql/uuid-argument.js';

/** The points of a plan for other programs: rows for a spreadsheet, and a scene (MVR, DIN SPEC 15801). */
@Controller('api/points')
export class PointsController {
  constructor(
    private readonly plans: PlanReader,
    private readonly dataSource: DataSource,
  ) {}

  @AllowEverybody()
  @Get(':planId/points.csv')
  async csv(@Param('planId', UuidArgument) planId: string, @Res() response: Response): Promise<void> {
    const { plan } = await this.plans.one(this.dataSource.manager, planId);
    response.setHeader('content-type', 'text/csv; charset=utf-8; header=present');
    response.setHeader('content-disposition', 'attachment; filename="points.csv"');
    response.send(writeCsv(pointRows(plan.picks)));
  }

  @AllowEverybody()
  @Get(':planId/points.mvr')
  async scene(@Param('planId', UuidArgument) planId: string, @Res() response: Response): Promise<void> {
    const { plan } = await this.plans.one(this.dataSource.manager, planId);
    response.setHeader('content-type', 'application/octet-stream');
    response.setHeader('content-disposition', 'attachment; filename="points.mvr"');
    response.send(Buffer.from(zipSync({ 'GeneralSceneDescription.xml': strToU8(scenePoints(plan.picks, planId)) })));
  }
}
