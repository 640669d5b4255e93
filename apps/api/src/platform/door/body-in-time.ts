import type { Server } from 'node:http';
import type { RequestHandler } from 'express';
import { answerRefused } from './answer-refused.js';

/** A body that is not there by then is given up; `milliseconds` from the end of the head. */
export function bodyInTime(milliseconds: number): RequestHandler {
  return (request, response, next) => {
    if (request.method === 'GET' || request.method === 'HEAD') return next();
    const late = setTimeout(() => {
      if (request.complete || response.headersSent) return;
      response.setHeader('connection', 'close');
      answerRefused(
        response,
        408,
        'TOO_LATE',
        `The body was not there after ${milliseconds / 1000} seconds. Nothing was done; send it again.`,
      );
    }, milliseconds);
    const there = () => clearTimeout(late);
    request.once('end', there).once('close', there);
    response.once('close', there);
    next();
  };
}

/** What no route sees: heads that never end, connections that say nothing, more connections than a process can hold. */
export function boundConnections(server: Server): void {
  server.headersTimeout = 10_000;
  // The longest that a file may take on its way; operations have less, by `bodyInTime`.
  server.requestTimeout = 180_000;
  server.keepAliveTimeout = 10_000;
  server.maxConnections = 4_000;
  // How often node looks at the first two; read when the server begins to listen.
  Object.assign(server, { connectionsCheckingInterval: 2_000 });
}
