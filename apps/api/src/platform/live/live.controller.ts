import { Controller, Get, Headers, HttpException, type OnModuleDestroy, Query, Req, Res } from '@nestjs/common';
import type { Request, Response } from 'express';
import type { SignedIn } from '../sign-in/person.js';
import { SessionStore } from '../sign-in/session-store.js';
import { AllowEverybody, Me } from '../sign-in/signed-in.js';
import { ChangeFeed } from './change-feed.js';
import { ChangeLog, type Changes } from './change-log.js';

/** Streams that one person may have open at one API: devices, not tabs. */
const streamsOfOne = 12;
const streamsOfAll = 2_000;

/** A sign of life, and a look whether the session still holds, milliseconds. Proxies close what is silent for a minute. */
const heartbeatMs = 25_000;

/** A reader that has this much unread is let go; it comes back with its position, bytes. */
const mostUnread = 64 * 1024;

interface Stream {
  readonly personId: string;
  readonly request: Request;
  /** A session of this person has ended: nothing is told before it is known whether it was this one. */
  isDoubted: boolean;
}

/** What changed: told while a stream is open (server-sent events, WHATWG HTML), or asked for with a position. */
@Controller('api')
export class LiveController implements OnModuleDestroy {
  private readonly open = new Map<Response, Stream>();

  constructor(
    private readonly feed: ChangeFeed,
    private readonly log: ChangeLog,
    private readonly sessions: SessionStore,
  ) {
    feed.whenSessionsEnd((accountId) => {
      for (const [response, stream] of this.open)
        if (accountId === undefined || stream.personId === accountId) {
          stream.isDoubted = true;
          void this.isHeld(response, stream);
        }
    });
  }

  /** "What version": a few bytes, for where a stream does not come through. */
  @AllowEverybody()
  @Get('changes')
  changes(@Query('since') since: string | undefined): Promise<Changes> {
    return this.log.since(since);
  }

  @AllowEverybody()
  @Get('events')
  async events(
    @Headers('last-event-id') last: string | undefined,
    @Query('since') since: string | undefined,
    @Req() request: Request,
    @Res() response: Response,
    @Me() me: SignedIn,
  ): Promise<void> {
    const own = [...this.open.values()].filter((each) => each.personId === me.id).length;
    if (own >= streamsOfOne || this.open.size >= streamsOfAll)
      throw new HttpException({ message: 'Too many streams are open; ask /api/changes now and then instead.' }, 429);
    const stream: Stream = { personId: me.id, request, isDoubted: false };
    this.open.set(response, stream);
    response.on('close', () => this.open.delete(response));
    response.writeHead(200, {
      'content-type': 'text/event-stream; charset=utf-8',
      // Not held back and not packed by anything in between.
      'cache-control': 'no-cache, no-transform',
      'x-accel-buffering': 'no',
      connection: 'keep-alive',
    });
    response.write('retry: 2000\n\n');
    await this.tell(stream, response, last ?? since);
  }

  onModuleDestroy(): void {
    for (const response of this.open.keys()) response.end();
  }

  /** First what changed since the last position, then all that comes; in between nothing is lost, for listening begins before looking back. */
  private async tell(stream: Stream, response: Response, last: string | undefined): Promise<void> {
    const waiting: Changes[] = [];
    let isCaughtUp = false;
    const stop = await this.feed.subscribe((changes) =>
      isCaughtUp ? void this.sendHeld(response, stream, changes) : waiting.push(changes),
    );
    const heartbeat = setInterval(() => void this.beat(response, stream), heartbeatMs);
    const end = () => {
      clearInterval(heartbeat);
      stop();
    };
    if (response.destroyed || response.writableEnded) return end();
    response.on('close', end);
    try {
      send(response, await this.log.since(last));
    } catch {
      // The database is away: the browser comes back with its position.
      response.end();
    }
    for (const changes of waiting) send(response, changes);
    isCaughtUp = true;
  }

  private async beat(response: Response, stream: Stream): Promise<void> {
    if (await this.isHeld(response, stream)) response.write(': here\n\n');
  }

  private async sendHeld(response: Response, stream: Stream, changes: Changes): Promise<void> {
    if (!stream.isDoubted || (await this.isHeld(response, stream))) send(response, changes);
  }

  /** Whether the session of a stream holds; a stream whose session does not is ended. */
  private async isHeld(response: Response, stream: Stream): Promise<boolean> {
    const me = await this.sessions.find(stream.request).catch(() => null);
    if (response.writableEnded || response.destroyed) return false;
    if (me === undefined) response.end('event: signed-out\ndata: {}\n\n');
    // While the database is away nobody can say; the browser comes back with its position.
    else if (me === null && stream.isDoubted) response.end();
    else stream.isDoubted = false;
    return !response.writableEnded;
  }
}

function send(response: Response, { position, topics }: Changes): void {
  if (response.writableEnded || response.destroyed) return;
  if (response.writableLength > mostUnread) response.destroy();
  else response.write(`id: ${position}\ndata: ${JSON.stringify(topics)}\n\n`);
}
