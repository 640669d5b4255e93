import { Controller, HttpCode, HttpException, Param, Post, Query, Req } from '@nestjs/common';
import type { Request } from 'express';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { AllowEverybody, Me } from '../../../platform/sign-in/signed-in.js';
import { reportFileFault } from '../records/file-kind.js';
import { LentService } from './lent.service.js';

/** Papers of kit of others, photographed or as files: handed in by whoever sees them, read as reports are. */
@Controller('api/papers')
export class PaperController {
  constructor(private readonly service: LentService) {}

  @AllowEverybody()
  @Post(':itemId')
  @HttpCode(200)
  async keep(
    @Param('itemId') itemId: string,
    @Query('name') name: string | undefined,
    @Req() request: Request,
    @Me() me: SignedIn,
  ): Promise<{ id: string }> {
    const type = String(request.headers['content-type'] ?? '')
      .split(';', 1)
      .join('');
    const fault = reportFileFault(type, request.body);
    if (fault) throw new HttpException({ message: 'No paper was kept.', faults: [fault] }, 415);
    return { id: await this.service.seePaper(itemId, String(name ?? ''), type, request.body as Buffer, me) };
  }
}
