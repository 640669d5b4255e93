import type { GraphQLError, GraphQLFormattedError } from 'graphql';
import type { Metrics } from '../metrics/metrics.js';
import { noteFault } from './written.js';
import { toldOf } from './fault.filter.js';
import { maskFault } from './mask-fault.js';

const told = new Set([
  'BAD_INPUT',
  'NOT_ALLOWED',
  'NOT_FOUND',
  'NOT_SIGNED_IN',
  'OUTCOME_UNKNOWN',
  'DATABASE_AWAY',
  'NO_ROOM',
  'BUSY',
  'TOO_MUCH',
  'TOO_LONG',
  'NEW_PASSWORD_WANTED',
  'GRAPHQL_VALIDATION_FAILED',
  'GRAPHQL_PARSE_FAILED',
  'BAD_USER_INPUT',
  'BAD_REQUEST',
  'OPERATION_RESOLUTION_FAILURE',
]);

/** What is told goes out without its stack; a fault is masked. */
export const formatError =
  (metrics: Metrics) =>
  (formatted: GraphQLFormattedError, fault: unknown): GraphQLFormattedError => {
    const code = formatted.extensions?.code;
    if (typeof code === 'string' && told.has(code)) {
      const { stacktrace: _stack, ...extensions } = formatted.extensions ?? {};
      return { ...formatted, extensions };
    }
    const error = fault as Partial<GraphQLError> | undefined;
    const original: unknown = error?.originalError ?? fault;
    // A field of the answer of a write is read after the write.
    if ((formatted.path?.length ?? 0) > 1 && /^\s*mutation\b/.test(error?.source?.body ?? '')) noteFault(original, 'saved');
    const inWords = toldOf(original);
    if (inWords && inWords !== original) return { ...formatted, message: inWords.message, extensions: { code: inWords.extensions.code } };
    const { message, incident } = maskFault(original, metrics, 'operation');
    return { message, extensions: { code: 'FAULT', incident } };
  };
