import { Controller, Get, HttpCode, Inject, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { CLOCK, type Clock } from '../config.js';
import type { SignedIn } from '../sign-in/person.js';
import { Me } from '../sign-in/signed-in.js';
import type { RequestRow } from './rows.js';

/** What became of a write whose answer was lost. */
export interface RequestOutcome {
  readonly outcome: 'saved' | 'not saved' | 'unknown yet';
}

/** Looked up by the id that the client gave; only one's own requests are told. */
@Controller('api/requests/:id')
export class RequestController {
  constructor(
    private readonly dataSource: DataSource,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  /** Without a word in its favour it may still be under way, here or on the wire. */
  @Get()
  async read(@Param('id', new ParseUUIDPipe()) id: string, @Me() me: SignedIn): Promise<RequestOutcome> {
    return { outcome: (await this.find(id, me)) ?? 'unknown yet' };
  }

  /** The last word: waits for the end of what is under way; what has not come by then is not taken any more. */
  @Post('settle')
  @HttpCode(200)
  async settle(@Param('id', new ParseUUIDPipe()) id: string, @Me() me: SignedIn): Promise<RequestOutcome> {
    await this.dataSource.query(
      `INSERT INTO request (id, step, person_id, operation, values_hash, state, at) VALUES ($1, 0, $2, '', '', 'given up', $3) ON CONFLICT DO NOTHING`,
      [id, me.id, this.clock.now()],
    );
    return { outcome: (await this.find(id, me)) ?? 'not saved' };
  }

  private async find(id: string, me: SignedIn): Promise<'saved' | 'not saved' | undefined> {
    const rows: { state: RequestRow['state'] }[] = await this.dataSource.query(
      'SELECT state FROM request WHERE id = $1 AND step = 0 AND person_id = $2',
      [id, me.id],
    );
    if (!rows[0]) return undefined;
    return rows[0].state === 'saved' ? 'saved' : 'not saved';
  }
}
