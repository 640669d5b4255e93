import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { Controller, Get, Res } from '@nestjs/common';
import type { Response } from 'express';
import { AllowEverybody } from '../../../platform/sign-in/signed-in.js';
import { ExaminationCsvService } from './examination-csv.service.js';

/** Records of examinations as CSV, in the columns in which examiners' lists come in. */
@Controller('api/csv/examinations')
export class ExaminationCsvController {
  constructor(private readonly csv: ExaminationCsvService) {}

  @AllowEverybody()
  @Get()
  async export(@Res() response: Response): Promise<void> {
    asFile(response, 'examinations.csv');
    await pipeline(Readable.from(this.csv.export()), response);
  }

  @AllowEverybody()
  @Get('example')
  example(@Res() response: Response): void {
    asFile(response, 'example-examinations.csv');
    response.send(this.csv.example());
  }
}

function asFile(response: Response, name: string): void {
  response.setHeader('content-type', 'text/csv; charset=utf-8');
  response.setHeader('content-disposition', `attachment; filename="${name}"`);
}
