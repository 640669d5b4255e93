import { randomUUID } from 'node:crypto';
import type { IncomingMessage, ServerResponse } from 'node:http';
import type { RequestHandler } from 'express';
import type { Logger } from 'pino';
import { pinoHttp } from 'pino-http';
import { logUnder } from './house-logger.js';

/** An id that came with the request is kept where it can stand in a log and a header as it is. */
const acceptable = /^[\w.:-]{1,64}$/;

export interface Identified extends IncomingMessage {
  /** What a GraphQL request asked for, as its log line says it: "mutation tick". */
  operation?: string;
}

/**
 * One line a request: id, method, path (never what stands behind the question mark), operation, status, milliseconds. The id comes from the header
 * x-request-id or is made, goes back in the same header, and stands in every line that is logged on the way.
 */
export function logRequests(logger: Logger): RequestHandler {
  const log = pinoHttp<Identified, ServerResponse>({
    logger,
    genReqId: (request, response) => {
      const given = request.headers['x-request-id'];
      const id = typeof given === 'string' && acceptable.test(given) ? given : randomUUID();
      response.setHeader('x-request-id', id);
      return id;
    },
    wrapSerializers: false,
    serializers: {
      req: (request: Identified & { id: string; originalUrl?: string }) => ({
        id: request.id,
        method: request.method,
        path: (request.originalUrl ?? request.url ?? '').split('?')[0],
      }),
    },
    customLogLevel: (_request, response, fault) => (fault || response.statusCode >= 500 ? 'error' : 'info'),
    customAttributeKeys: { responseTime: 'ms' },
    customSuccessObject: summary,
    customErrorObject: (request, response, fault: Error, given: { ms?: number }) => ({
      ...summary(request, response, given),
      ...(response.statusCode < 500 && { err: fault }),
    }),
    customSuccessMessage: (request, response) => (response.writableEnded ? 'answered' : 'the caller went away'),
    customErrorMessage: () => 'failed',
  });
  return (request, response, next) => {
    log(request, response);
    logUnder(request.log, next);
  };
}

const summary = ({ operation }: Identified, response: ServerResponse, { ms }: { ms?: number }): object => ({
  ...(operation && { operation }),
  status: response.statusCode,
  ms,
});
