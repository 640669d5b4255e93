import { type ArgumentsHost, Catch } from '@nestjs/common';
import { BaseExceptionFilter } from '@nestjs/core';
import type { Response } from 'express';
import { GraphQLError } from 'graphql';
import { QueryFailedError } from 'typeorm';
import { databaseErrorOf } from '../database/database-error.js';
import { BadInputError } from './fault.js';

const statusOf: Record<string, number> = { NOT_FOUND: 404, NOT_ALLOWED: 403, NOT_SIGNED_IN: 401, BAD_INPUT: 422, OUTCOME_UNKNOWN: 503 };

/** What the database cannot even read: 22P02 an id that is none, 22021 and 22P05 a text with a NUL in it. */
const unreadable: Record<string, string> = {
  '22P02': 'an id that is on file',
  '22021': 'a text without NUL characters',
  '22P05': 'a text without NUL characters',
};

/** What is told to the caller is no fault of ours: it is not logged, and plain routes get the same words with a status. */
@Catch(GraphQLError, QueryFailedError)
export class ToldFaultsFilter extends BaseExceptionFilter {
  override catch(fault: GraphQLError | QueryFailedError, host: ArgumentsHost): unknown {
    const told = toldOf(fault);
    if (host.getType<string>() === 'graphql') return told ?? fault;
    if (!told) return super.catch(fault, host);
    const response = host.switchToHttp().getResponse<Response>();
    response.status(statusOf[String(told.extensions.code)] ?? 400).json({ message: told.message, faults: told.extensions.faults ?? [] });
    return undefined;
  }
}

function toldOf(fault: GraphQLError | QueryFailedError): GraphQLError | undefined {
  if (fault instanceof GraphQLError) return fault;
  const wanted = unreadable[databaseErrorOf(fault)?.code ?? ''];
  return wanted === undefined ? undefined : new BadInputError([{ field: '(a name or an id)', value: null, wanted }]);
}
