import { type ArgumentsHost, Catch, HttpException, NotFoundException } from '@nestjs/common';
import { BaseExceptionFilter } from '@nestjs/core';
import type { Request, Response } from 'express';
import { GraphQLError } from 'graphql';
import { databaseErrorOf, isConnectionLost, isShortOf } from './database-error.js';
import { writtenBefore } from './written.js';
import { Metrics } from '../metrics/metrics.js';
import { BadInputError, BusyError, DatabaseAwayError, NoRoomError, TooLongError } from './fault.js';
import { maskFault } from './mask-fault.js';

const statusOf: Record<string, number> = {
  NOT_FOUND: 404,
  NOT_ALLOWED: 403,
  NOT_SIGNED_IN: 401,
  BAD_INPUT: 422,
  OUTCOME_UNKNOWN: 503,
  DATABASE_AWAY: 503,
  NO_ROOM: 507,
  BUSY: 503,
  TOO_LONG: 503,
  NEW_PASSWORD_WANTED: 403,
};

/** What the database cannot even read: 22P02 an id that is none, 22021 and 22P05 a text with a NUL in it. */
const unreadable: Record<string, string> = {
  '22P02': 'an id that is on file',
  '22021': 'a text without NUL characters',
  '22P05': 'a text without NUL characters',
};

/** 57014 query canceled: a statement took longer than any may (`data-source.ts`). */
const tooLong = '57014';

/** 40001 serialization failure, 40P01 deadlock, after all tries of a unit of work. */
const overtaken = new Set(['40001', '40P01']);

/** What is told to the caller is no fault of ours: plain routes get the words of an operation with a status. Any other fault of a plain route is masked here. */
@Catch()
export class FaultFilter extends BaseExceptionFilter {
  constructor(private readonly metrics: Metrics) {
    super();
  }

  override catch(fault: unknown, host: ArgumentsHost): unknown {
    const told = toldOf(fault);
    if (host.getType<string>() === 'graphql') return told ?? fault;
    const response = host.switchToHttp().getResponse<Response>();
    if (told) {
      const { http } = told.extensions as { http?: { status: number } };
      response
        .status(http?.status ?? statusOf[String(told.extensions.code)] ?? 400)
        .json({ message: told.message, faults: told.extensions.faults ?? [] });
    } else if (fault instanceof NotFoundException && host.switchToHttp().getRequest<Request>().route === undefined) {
      const { method, path } = host.switchToHttp().getRequest<Request>();
      response.status(404).json({ message: `There is nothing for ${method} at ${path.slice(0, 80)}.` });
    } else if (fault instanceof HttpException || this.isHttpError(fault)) {
      super.catch(fault, host);
    } else {
      const masked = maskFault(fault, this.metrics, 'route');
      if (response.headersSent) response.destroy();
      else response.status(500).json(masked);
    }
    return undefined;
  }
}

/** A fault in words that are nobody's secret, where there are any. */
export function toldOf(fault: unknown): GraphQLError | undefined {
  if (fault instanceof GraphQLError) return fault;
  const short = isShortOf(fault);
  if (short) return new NoRoomError(short, writtenBefore(fault));
  if (isConnectionLost(fault)) return new DatabaseAwayError(writtenBefore(fault));
  const code = databaseErrorOf(fault)?.code ?? '';
  if (code === tooLong) return new TooLongError();
  if (overtaken.has(code)) return new BusyError(writtenBefore(fault));
  const wanted = unreadable[code];
  return wanted === undefined
    ? undefined
    : new BadInputError([{ field: 'a name or an id of this request', value: 'something else', wanted }]);
}
