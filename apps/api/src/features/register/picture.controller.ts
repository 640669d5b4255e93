import { Controller, HttpCode, Param, Post, Query, Req } from '@nestjs/common';
import type { Request } from 'express';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { AllowEverybody, Me } from '../../platform/sign-in/signed-in.js';
import { handedIn } from './records/handed-in.js';
import { RegisterService } from './register.service.js';

/** Pictures of what is wrong with an item: taken by whoever finds it, read as reports are. */
@Controller('api/pictures')
export class PictureController {
  constructor(private readonly service: RegisterService) {}

  @AllowEverybody()
  @Post(':itemId')
  @HttpCode(200)
  async keep(
    @Param('itemId') itemId: string,
    @Query('name') name: string | undefined,
    @Req() request: Request,
    @Me() me: SignedIn,
  ): Promise<{ id: string }> {
    const { type, bytes } = handedIn(request, 'picture');
    return { id: await this.service.keepPicture(itemId, name ?? 'picture', type, bytes, me) };
  }
}
