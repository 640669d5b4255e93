import { randomUUID } from 'node:crypto';
import { Logger } from '@nestjs/common';
import type { GraphQLFormattedError } from 'graphql';

const told = new Set([
  'BAD_INPUT',
  'NOT_ALLOWED',
  'NOT_FOUND',
  'NOT_SIGNED_IN',
  'OUTCOME_UNKNOWN',
  'GRAPHQL_VALIDATION_FAILED',
  'GRAPHQL_PARSE_FAILED',
  'BAD_USER_INPUT',
  'BAD_REQUEST',
  'OPERATION_RESOLUTION_FAILURE',
  'PERSISTED_QUERY_NOT_FOUND',
]);
const logger = new Logger('fault');

/** The one edge at which a fault is masked: logged whole with an incident id, told as that id alone. */
export function formatError(formatted: GraphQLFormattedError, fault: unknown): GraphQLFormattedError {
  const code = formatted.extensions?.code;
  if (typeof code === 'string' && told.has(code)) {
    const { stacktrace: _stack, ...extensions } = formatted.extensions ?? {};
    return { ...formatted, extensions };
  }
  const incident = randomUUID();
  const original = (fault as { originalError?: Error } | undefined)?.originalError ?? fault;
  logger.error(`${incident} ${original instanceof Error ? (original.stack ?? original.message) : String(original)}`);
  return {
    message: `Something went wrong here, not with what you typed. Nothing was saved. Incident ${incident}.`,
    extensions: { code: 'FAULT', incident },
  };
}
