import { Controller, Get, HttpCode, Param, Post } from '@nestjs/common';
import type { SignedIn } from '../sign-in/person.js';
import { AllowEverybody, Me } from '../sign-in/signed-in.js';
import { RequestLog } from './request-log.js';
import { UuidArgument } from '../graphql/uuid-argument.js';

/** What became of a write whose answer was lost. */
export interface RequestOutcome {
  readonly outcome: 'saved' | 'not saved' | 'unknown yet';
}

/** Looked up by the id that the client gave. */
@Controller('api/requests/:id')
export class RequestController {
  constructor(private readonly log: RequestLog) {}

  /** Without a word of it, it may still be under way, here or on the wire. */
  @AllowEverybody()
  @Get()
  async read(@Param('id', UuidArgument) id: string, @Me() me: SignedIn): Promise<RequestOutcome> {
    return { outcome: (await this.log.find(id, me.id)) ?? 'unknown yet' };
  }

  /** The last word. */
  @AllowEverybody()
  @Post('settle')
  @HttpCode(200)
  async settle(@Param('id', UuidArgument) id: string, @Me() me: SignedIn): Promise<RequestOutcome> {
    await this.log.giveUp(id, me.id);
    return { outcome: (await this.log.find(id, me.id)) ?? 'not saved' };
  }
}
