import { Controller, Get, HttpCode, HttpException, Param, Post, Query, Req, Res } from '@nestjs/common';
import type { Request, Response } from 'express';
import { DataSource } from 'typeorm';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { Allow, AllowEverybody, ByDeputy, Me } from '../../platform/sign-in/signed-in.js';
import { RegisterService } from './register.service.js';
import { ReportFileRow } from './rows.js';
import { handedIn } from './records/handed-in.js';
import { UuidArgument } from '../../platform/graphql/uuid-argument.js';

/** Reports of examinations as files: handed in by the safety officer, read by everybody who is signed in. */
@Controller('api/reports')
export class ReportController {
  constructor(
    private readonly service: RegisterService,
    private readonly dataSource: DataSource,
  ) {}

  @Allow('safety')
  @ByDeputy({ item: 'itemId' })
  @Post(':itemId')
  @HttpCode(200)
  async keep(
    @Param('itemId') itemId: string,
    @Query('name') name: string | undefined,
    @Req() request: Request,
    @Me() me: SignedIn,
  ): Promise<{ id: string }> {
    const { type, bytes } = handedIn(request, 'report');
    return { id: await this.service.keepReport(itemId, name ?? 'report', type, bytes, me) };
  }

  @AllowEverybody()
  @Get(':id')
  async read(@Param('id', UuidArgument) id: string, @Res() response: Response): Promise<void> {
    const row = await this.dataSource.getRepository(ReportFileRow).findOneBy({ id });
    if (!row) throw new HttpException({ message: 'There is no such report.' }, 404);
    response.setHeader('content-type', row.type);
    response.setHeader('content-disposition', `attachment; filename*=UTF-8''${encodeURIComponent(row.name)}`);
    response.send(row.bytes);
  }
}
