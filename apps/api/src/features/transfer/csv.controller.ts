import { Controller, Get, HttpCode, HttpException, Param, Post, Query, Req, Res } from '@nestjs/common';
import type { Request, Response } from 'express';
import type { ItemKind } from '#tour-file';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { Allow, Me } from '../../platform/sign-in/signed-in.js';
import { CsvService } from './csv.service.js';

/** The register as CSV, one file for each kind of item. */
@Controller('api/csv')
export class CsvController {
  constructor(private readonly csv: CsvService) {}

  @Get(':kind')
  async export(@Param('kind') kind: string, @Res() response: Response): Promise<void> {
    send(response, `${kindOf(kind)}s.csv`, await this.csv.export(kindOf(kind)));
  }

  @Get(':kind/example')
  example(@Param('kind') kind: string, @Res() response: Response): void {
    send(response, `example-${kindOf(kind)}s.csv`, this.csv.example(kindOf(kind)));
  }

  @Allow('warehouse', 'system')
  @Post(':kind')
  @HttpCode(200)
  async import(
    @Param('kind') kind: string,
    @Query('dryRun') dryRun: string | undefined,
    @Req() request: Request,
    @Me() me: SignedIn,
  ): Promise<object> {
    if (!Buffer.isBuffer(request.body))
      throw new HttpException(
        {
          message: 'Nothing was imported.',
          faults: [{ row: 1, column: '', value: String(request.headers['content-type'] ?? ''), wanted: 'a CSV file, sent as text/csv' }],
        },
        415,
      );
    const answer = await this.csv.import(kindOf(kind), request.body, dryRun === 'true', me);
    if (answer.faults.length > 0) throw new HttpException({ message: 'Nothing was imported.', ...answer }, 422);
    return answer;
  }
}

function kindOf(text: string): ItemKind {
  const kind = CsvService.kindOf(text);
  if (!kind) throw new HttpException({ message: `There is no kind of item called ${text.slice(0, 40)}.` }, 404);
  return kind;
}

function send(response: Response, name: string, text: string): void {
  response.setHeader('content-type', 'text/csv; charset=utf-8');
  response.setHeader('content-disposition', `attachment; filename="${name}"`);
  response.send(text);
}
