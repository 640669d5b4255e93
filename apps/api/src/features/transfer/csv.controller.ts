import { Controller, Get, HttpCode, HttpException, Param, Post, Query, Req, Res } from '@nestjs/common';
import type { Request, Response } from 'express';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { AllowEverybody, Me } from '../../platform/sign-in/signed-in.js';
import type { CsvImport } from './csv-import.js';
import { bodyOf, known, reasonOf } from './csv-request.js';
import { CsvService } from './csv.service.js';
import { ModelCsvService } from './model-csv.service.js';

/** The register as CSV, one file for each kind of item. */
@Controller('api/csv/items')
export class ItemCsvController {
  constructor(private readonly csv: CsvService) {}

  @AllowEverybody()
  @Get(':kind')
  async export(@Param('kind') kind: string, @Res() response: Response): Promise<void> {
    send(response, `${kind}s.csv`, await this.csv.export(known(CsvService.kindOf(kind), kind)));
  }

  @AllowEverybody()
  @Get(':kind/example')
  example(@Param('kind') kind: string, @Res() response: Response): void {
    send(response, `example-${kind}s.csv`, this.csv.example(known(CsvService.kindOf(kind), kind)));
  }

  @AllowEverybody()
  @Post(':kind/edit')
  @HttpCode(200)
  async edit(@Param('kind') kind: string, @Query('reason') reason: string | undefined, @Req() request: Request, @Me() me: SignedIn) {
    return told(await this.csv.edit(known(CsvService.kindOf(kind), kind), bodyOf(request), me, reasonOf(reason)));
  }

  @AllowEverybody()
  @Post(':kind')
  @HttpCode(200)
  async import(
    @Param('kind') kind: string,
    @Query('dryRun') dryRun: string | undefined,
    @Query('reason') reason: string | undefined,
    @Req() request: Request,
    @Me() me: SignedIn,
  ) {
    return told(await this.csv.import(known(CsvService.kindOf(kind), kind), bodyOf(request), dryRun === 'true', me, reasonOf(reason)));
  }
}

/** The catalogue as CSV, one file for each kind of model. */
@Controller('api/csv/models')
export class ModelCsvController {
  constructor(private readonly csv: ModelCsvService) {}

  @AllowEverybody()
  @Get(':kind')
  async export(@Param('kind') kind: string, @Res() response: Response): Promise<void> {
    send(response, `models-${kind}.csv`, await this.csv.export(known(ModelCsvService.kindOf(kind), kind)));
  }

  @AllowEverybody()
  @Get(':kind/example')
  example(@Param('kind') kind: string, @Res() response: Response): void {
    send(response, `example-models-${kind}.csv`, this.csv.example(known(ModelCsvService.kindOf(kind), kind)));
  }

  @AllowEverybody()
  @Post(':kind/edit')
  @HttpCode(200)
  async edit(@Param('kind') kind: string, @Query('reason') reason: string | undefined, @Req() request: Request, @Me() me: SignedIn) {
    return told(await this.csv.edit(known(ModelCsvService.kindOf(kind), kind), bodyOf(request), me, reasonOf(reason)));
  }

  @AllowEverybody()
  @Post(':kind')
  @HttpCode(200)
  async import(
    @Param('kind') kind: string,
    @Query('dryRun') dryRun: string | undefined,
    @Query('reason') reason: string | undefined,
    @Req() request: Request,
    @Me() me: SignedIn,
  ) {
    return told(await this.csv.import(known(ModelCsvService.kindOf(kind), kind), bodyOf(request), dryRun === 'true', me, reasonOf(reason)));
  }
}

/** Faults are told with the answer, the first two hundred of them. */
function told(answer: CsvImport): CsvImport {
  if (answer.faults.length > 0)
    throw new HttpException({ message: 'Nothing was imported.', ...answer, faults: answer.faults.slice(0, 200) }, 422);
  return answer;
}

function send(response: Response, name: string, text: string): void {
  response.setHeader('content-type', 'text/csv; charset=utf-8');
  response.setHeader('content-disposition', `attachment; filename="${name}"`);
  response.send(text);
}
