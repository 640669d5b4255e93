import { Controller, HttpCode, Param, Post, Query, Req } from '@nestjs/common';
import type { Request } from 'express';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { AllowEverybody, Me } from '../../../platform/sign-in/signed-in.js';
import { handedIn } from '../records/handed-in.js';
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
    const { type, bytes } = handedIn(request, 'paper');
    return { id: await this.service.seePaper(itemId, String(name ?? ''), type, bytes, me) };
  }
}
