import { Controller, HttpCode, HttpException, Param, Post, Query, Req } from '@nestjs/common';
import type { Request } from 'express';
import { DeputyScopes } from '../../../platform/sign-in/deputy.js';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { Allow, Me } from '../../../platform/sign-in/signed-in.js';
import { bodyOf, known, reasonOf } from '../csv-request.js';
import { CsvService } from '../csv.service.js';
import { ModelCsvService } from '../model-csv.service.js';
import { Imports } from './imports.js';

/** Files with however many rows: taken at once, followed under the id that is answered. */
@Controller('api/imports')
export class ImportController {
  constructor(
    private readonly imports: Imports,
    private readonly deputies: DeputyScopes,
  ) {}

  @Allow('warehouse', 'system', 'safety')
  @Post('items/:kind')
  @HttpCode(202)
  items(
    @Param('kind') kind: string,
    @Query('dryRun') dryRun: string | undefined,
    @Query('reason') reason: string | undefined,
    @Req() request: Request,
    @Me() me: SignedIn,
  ): Promise<{ id: string }> {
    return this.start(`items/${known(CsvService.kindOf(kind), kind)}`, request, dryRun, reason, me);
  }

  @Allow('warehouse', 'system', 'safety')
  @Post('models/:kind')
  @HttpCode(202)
  models(
    @Param('kind') kind: string,
    @Query('dryRun') dryRun: string | undefined,
    @Query('reason') reason: string | undefined,
    @Req() request: Request,
    @Me() me: SignedIn,
  ): Promise<{ id: string }> {
    return this.start(`models/${known(ModelCsvService.kindOf(kind), kind)}`, request, dryRun, reason, me);
  }

  @Allow('warehouse', 'system', 'safety')
  @Post('examinations')
  @HttpCode(202)
  async examinations(@Query('dryRun') dryRun: string | undefined, @Req() request: Request, @Me() me: SignedIn): Promise<{ id: string }> {
    // A list is of the whole house: what passed on it counts at once by the officer's hand, and by that of a deputy of the whole house.
    const acting = me.role === 'safety' ? me : await this.deputies.acting(me, {});
    return this.start('examinations', request, dryRun, undefined, acting ?? me);
  }

  private async start(
    of: string,
    request: Request,
    dryRun: string | undefined,
    reason: string | undefined,
    me: SignedIn,
  ): Promise<{ id: string }> {
    const given = { of, bytes: bodyOf(request), dryRun: dryRun === 'true', reason: reasonOf(reason) };
    const id = await this.imports.start(given, me);
    if (id === undefined)
      throw new HttpException({ message: 'Several files are coming in already. Nothing was taken; send it again when they are in.' }, 429);
    return { id };
  }
}
