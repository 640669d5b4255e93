import { Body, Controller, Get, HttpCode, HttpException, Param, Post, Query, Res } from '@nestjs/common';
import type { Response } from 'express';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { Allow, AllowEverybody, Me } from '../../platform/sign-in/signed-in.js';
import { TourFileService } from './tour-file.service.js';

/** Tour files in and out: the same file that `npm run plan` reads. */
@Controller('api/tours')
export class TourFileController {
  constructor(private readonly files: TourFileService) {}

  @AllowEverybody()
  @Get(':id/file')
  async export(@Param('id') id: string, @Res() response: Response): Promise<void> {
    const file = await this.files.export(id);
    response.setHeader('content-disposition', `attachment; filename="${encodeURIComponent(id)}.json"`);
    response.json(file);
  }

  @Allow('system')
  @Post('file')
  @HttpCode(200)
  async import(@Body() body: unknown, @Query('dryRun') dryRun: string | undefined, @Me() me: SignedIn): Promise<object> {
    const answer = await this.files.import(body, me, dryRun === 'true');
    if (answer.faults.length > 0) throw new HttpException({ message: 'Nothing was imported.', faults: answer.faults }, 422);
    return answer;
  }
}
