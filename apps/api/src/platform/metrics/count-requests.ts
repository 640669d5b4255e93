import type { NextFunction, Request, RequestHandler, Response } from 'express';
import type { Metrics } from './metrics.js';

/** Counts every answer by its route's pattern, never by its address: one label for all tours, one for all files of the screens. */
export function countRequests(metrics: Metrics): RequestHandler {
  return (request: Request, response: Response, next: NextFunction) => {
    const start = performance.now();
    response.once('close', () => {
      const labels = { method: request.method, route: routeOf(request) };
      metrics.requests.inc({ ...labels, status: response.statusCode });
      // A stream of events is open as long as its page: its length says nothing of us.
      if (response.getHeader('content-type') !== 'text/event-stream')
        metrics.requestSeconds.observe(labels, (performance.now() - start) / 1000);
    });
    next();
  };
}

function routeOf(request: Request): string {
  const route = (request as { route?: { path?: string } }).route?.path;
  if (route) return route;
  if (request.originalUrl.startsWith('/graphql')) return '/graphql';
  return request.originalUrl.startsWith('/api') ? '/api (no such route)' : '(screens)';
}
