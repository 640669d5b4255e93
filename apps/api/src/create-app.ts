import type { ServerResponse } from 'node:http';
import 'reflect-metadata';
import { join } from 'node:path';
import { NestFactory } from '@nestjs/core';
import type { NestExpressApplication } from '@nestjs/platform-express';
import express, { type NextFunction, type Request, type Response } from 'express';
import { AppModule, type AppOptions } from './app.module.js';

/** Largest request body: a tour file or a CSV of a whole register. */
const largestBody = '20mb';

/** The API with its screens, ready to listen. */
export async function createApp(options: AppOptions): Promise<NestExpressApplication> {
  const app = await NestFactory.create<NestExpressApplication>(AppModule.with(options), { logger: ['error', 'warn'], bodyParser: false });
  app.disable('x-powered-by');
  app.use(securityHeaders);
  app.use('/graphql', express.json({ limit: '20mb' }));
  app.use('/api/csv', express.raw({ type: ['text/csv', 'application/csv', 'application/octet-stream', 'text/plain'], limit: largestBody }));
  app.use('/api/reports', express.raw({ type: ['application/pdf', 'image/*'], limit: largestBody }));
  app.use('/api', express.json({ limit: largestBody }));
  app.use('/api', refuseForeignWrites);
  app.use(bodyFaults);
  if (options.config.webFolder !== null) serveScreens(app, options.config.webFolder);
  return app;
}

function securityHeaders(_request: Request, response: Response, next: NextFunction): void {
  response.setHeader('x-content-type-options', 'nosniff');
  response.setHeader('referrer-policy', 'same-origin');
  response.setHeader('x-frame-options', 'DENY');
  response.setHeader(
    'content-security-policy',
    "default-src 'self'; img-src 'self' data:; style-src 'self' 'unsafe-inline'; font-src 'self' data:; connect-src 'self'; frame-ancestors 'none'",
  );
  next();
}

/** A form of another site cannot set this header. */
function refuseForeignWrites(request: Request, response: Response, next: NextFunction): void {
  if (request.method === 'GET' || request.method === 'HEAD' || request.headers['x-cartwright'] === '1') return next();
  response.status(403).json({ message: 'Send the header "x-cartwright: 1" with what you write.' });
}

/** What is wrong with a body, in words; never a stack. */
function bodyFaults(
  fault: { type?: string; status?: number; message?: string; body?: string } | undefined,
  _request: Request,
  response: Response,
  next: NextFunction,
): void {
  if (!fault) return next();
  const say = (status: number, value: string, wanted: string) =>
    response
      .status(status)
      .json({ message: `Nothing was read: wanted ${wanted}.`, faults: [{ field: '(whole file)', row: 1, column: '', value, wanted }] });
  if (fault.type === 'entity.too.large') say(413, 'a larger file', `a file of at most ${largestBody.toUpperCase()}`);
  else if (fault.type === 'charset.unsupported' || fault.type === 'encoding.unsupported') say(415, 'another encoding', 'UTF-8');
  else if (fault.body !== undefined && /[\u0000\ufffd]/.test(fault.body.slice(0, 200)))
    say(400, 'UTF-16', 'JSON (RFC 8259) in UTF-8; save it again as UTF-8');
  else if ((fault.status ?? 500) < 500) say(400, (fault.message ?? '').slice(0, 100), 'JSON (RFC 8259) in UTF-8');
  else next(fault);
}

function serveScreens(app: NestExpressApplication, folder: string): void {
  app.useStaticAssets(folder, {
    index: false,
    setHeaders: (response: ServerResponse, path: string) =>
      response.setHeader('cache-control', path.includes('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache'),
  });
  const page = join(folder, 'index.html');
  app.use((request: Request, response: Response, next: NextFunction) => {
    const isScreen =
      request.method === 'GET' && !/^\/(graphql|api|healthz)(\/|$)/.test(request.path) && !/\.[a-z0-9]+$/i.test(request.path);
    if (!isScreen) return next();
    response.setHeader('cache-control', 'no-cache');
    response.sendFile(page);
  });
}
