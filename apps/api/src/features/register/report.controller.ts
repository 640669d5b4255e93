import { Controller, Get, HttpCode, HttpException, Param, ParseUUIDPipe, Post, Query, Req, Res } from '@nestjs/common';
import type { Request, Response } from 'express';
import { DataSource } from 'typeorm';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { Allow, AllowEverybody, Me } from '../../platform/sign-in/signed-in.js';
import { RegisterService } from './register.service.js';
import { ReportFileRow } from './rows.js';

/** Types of reports, and how a file of each begins (ISO 32000-2, 7.5.2; ISO/IEC 10918-1, B.1.1.3; PNG Specification, 5.2): what is sent may say anything. */
const types: Readonly<Record<string, Buffer>> = {
  'application/pdf': Buffer.from('%PDF-'),
  'image/jpeg': Buffer.from([0xff, 0xd8, 0xff]),
  'image/png': Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
};

/** Reports of examinations as files: handed in by the safety officer, read by everybody who is signed in. */
@Controller('api/reports')
export class ReportController {
  constructor(
    private readonly service: RegisterService,
    private readonly dataSource: DataSource,
  ) {}

  @Allow('safety')
  @Post(':itemId')
  @HttpCode(200)
  async keep(
    @Param('itemId') itemId: string,
    @Query('name') name: string | undefined,
    @Req() request: Request,
    @Me() me: SignedIn,
  ): Promise<{ id: string }> {
    const type = String(request.headers['content-type'] ?? '').split(';')[0]!;
    const begins = Object.hasOwn(types, type) ? types[type] : undefined;
    const refuse = (value: string, wanted: string) =>
      new HttpException({ message: 'No report was kept.', faults: [{ field: 'file', value, wanted }] }, 415);
    if (!begins || !Buffer.isBuffer(request.body) || request.body.length === 0)
      throw refuse(type, `a file of type ${Object.keys(types).join(', ')}`);
    if (!request.body.subarray(0, begins.length).equals(begins))
      throw refuse(`a file that does not begin like ${type}`, `a file that is what it says: ${type}`);
    return { id: await this.service.keepReport(itemId, name ?? 'report', type, request.body, me) };
  }

  @AllowEverybody()
  @Get(':id')
  async read(@Param('id', new ParseUUIDPipe()) id: string, @Res() response: Response): Promise<void> {
    const row = await this.dataSource.getRepository(ReportFileRow).findOneBy({ id });
    if (!row) throw new HttpException({ message: 'There is no such report.' }, 404);
    response.setHeader('content-type', row.type);
    response.setHeader('content-disposition', `attachment; filename*=UTF-8''${encodeURIComponent(row.name)}`);
    response.send(row.bytes);
  }
}
