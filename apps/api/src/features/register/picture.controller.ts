import { Controller, HttpCode, HttpException, Param, Post, Query, Req } from '@nestjs/common';
import type { Request } from 'express';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { AllowEverybody, Me } from '../../platform/sign-in/signed-in.js';
import { reportFileFault } from './records/file-kind.js';
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
    const type = String(request.headers['content-type'] ?? '')
      .split(';', 1)
      .join('');
    const fault = reportFileFault(type, request.body);
    if (fault) throw new HttpException({ message: 'No picture was kept.', faults: [fault] }, 415);
    return { id: await this.service.keepPicture(itemId, name ?? 'picture', type, request.body as Buffer, me) };
  }
}
