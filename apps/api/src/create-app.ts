import 'reflect-metadata';
import { NestFactory } from '@nestjs/core';
import type { NestExpressApplication } from '@nestjs/platform-express';
import compression from 'compression';
import type { DestinationStream } from 'pino';
import { AppModule, type AppOptions } from './app.module.js';
import { boundConnections } from './platform/door/body-in-time.js';
import { securityHeaders } from './platform/http/security-headers.js';
import { serveScreens } from './platform/http/serve-screens.js';
import { takeBodies } from './platform/http/take-bodies.js';
import { HouseLogger } from './platform/logs/house-logger.js';
import { logRequests } from './platform/logs/log-requests.js';
import { makeLogger } from './platform/logs/make-logger.js';
import { countRequests } from './platform/metrics/count-requests.js';
import { Metrics } from './platform/metrics/metrics.js';
import { probes } from './platform/probes.js';

export interface CreateAppOptions extends Omit<AppOptions, 'logger'> {
  /** Where log lines go; the standard output unless told otherwise. */
  readonly logTo?: DestinationStream;
  /** Speaks TLS itself, with this key and certificate (PEM); without it a proxy may. */
  readonly tls?: { readonly key: string; readonly cert: string };
}

/** The API with its screens, ready to listen. */
export async function createApp({ logTo, tls, ...options }: CreateAppOptions): Promise<NestExpressApplication> {
  const logger = makeLogger(options.config, logTo);
  const app = await NestFactory.create<NestExpressApplication>(AppModule.with({ ...options, logger }), {
    logger: new HouseLogger(logger),
    bodyParser: false,
    ...(tls && { httpsOptions: { key: tls.key, cert: tls.cert } }),
  });
  app.disable('x-powered-by');
  app.set('trust proxy', options.config.trustProxy);
  boundConnections(app.getHttpServer());
  app.use(probes(app));
  app.use(logRequests(logger));
  app.use(countRequests(app.get(Metrics)));
  const { secureCookies } = options.config;
  app.use(securityHeaders({ overTls: secureCookies, staysOnTls: secureCookies && tls === undefined }));
  app.use(
    compression({ filter: (request, response) => !isStream(response.getHeader('content-type')) && compression.filter(request, response) }),
  );
  takeBodies(app);
  if (options.config.webFolder !== null) serveScreens(app, options.config.webFolder);
  return app;
}

/** Server-sent events must reach the page one by one, not when a compressor has enough of them. */
const isStream = (type: unknown): boolean => String(type).startsWith('text/event-stream');
