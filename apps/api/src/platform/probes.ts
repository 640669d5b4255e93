import { timingSafeEqual } from 'node:crypto';
import type { INestApplicationContext } from '@nestjs/common';
import express, { type Request, type Router } from 'express';
import { CONFIG, type Config } from './config/config.js';
import { Metrics } from './metrics/metrics.js';
import { ReadinessCheck, isReady } from './readiness.js';

/**
 * What machines ask. `/healthz`: the process lives; asks nobody, so a stopped database does not get it killed. `/readyz`: 200 where work can be
 * taken, 503 with what is the matter. `/metrics`: for this machine, or for whoever sends the token.
 */
export function probes(app: INestApplicationContext): Router {
  const metrics = app.get(Metrics);
  const readiness = app.get(ReadinessCheck);
  const { metricsToken } = app.get<Config>(CONFIG);
  const router = express.Router();
  router.use(['/healthz', '/readyz', '/metrics'], (_request, response, next) => {
    response.setHeader('cache-control', 'no-store');
    next();
  });
  router.get('/healthz', (_request, response) => void response.json({ status: 'ok' }));
  router.get('/readyz', async (_request, response) => {
    const found = await readiness.look();
    response.status(isReady(found) ? 200 : 503).json(found);
  });
  router.get('/metrics', async (request, response) => {
    if (!mayRead(request, metricsToken))
      return void response.status(403).json({ message: 'Metrics are for this machine, or for a bearer token.' });
    response.type(metrics.contentType).send(await metrics.text());
  });
  return router;
}

const thisMachine = new Set(['127.0.0.1', '::1', '::ffff:127.0.0.1']);

/** Without a token: only this machine, and not through a proxy on it, which would make everybody look like this machine. */
function mayRead(request: Request, token: string | null): boolean {
  if (token !== null) {
    const given = Buffer.from(request.headers.authorization ?? '');
    const wanted = Buffer.from(`Bearer ${token}`);
    return given.length === wanted.length && timingSafeEqual(given, wanted);
  }
  const proxied = request.headers['x-forwarded-for'] !== undefined || request.headers.forwarded !== undefined;
  return !proxied && thisMachine.has(request.socket.remoteAddress ?? '');
}
