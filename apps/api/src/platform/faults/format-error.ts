import type { GraphQLFormattedError } from 'graphql';
import type { Metrics } from '../metrics/metrics.js';
import { maskFault } from './mask-fault.js';

const told = new Set([
  'BAD_INPUT',
  'NOT_ALLOWED',
  'NOT_FOUND',
  'NOT_SIGNED_IN',
  'OUTCOME_UNKNOWN',
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
    const { message, incident } = maskFault((fault as { originalError?: Error } | undefined)?.originalError ?? fault, metrics, 'operation');
    return { message, extensions: { code: 'FAULT', incident } };
  };
