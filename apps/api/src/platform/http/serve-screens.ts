import type { ServerResponse } from 'node:http';
import { join } from 'node:path';
import type { NestExpressApplication } from '@nestjs/platform-express';
import type { NextFunction, Request, Response } from 'express';

/** What a page's address never starts with. */
const notScreens = /^\/(graphql|api|healthz|readyz|metrics)(\/|$)/;

/** The built screens: assets carry a hash in their names and are kept for ever; the page itself is asked for anew each time. */
export function serveScreens(app: NestExpressApplication, folder: string): void {
  app.useStaticAssets(folder, {
    index: false,
    setHeaders: (response: ServerResponse, path: string) =>
      response.setHeader('cache-control', path.includes('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache'),
  });
  const page = join(folder, 'index.html');
  app.use((request: Request, response: Response, next: NextFunction) => {
    const isScreen =
      (request.method === 'GET' || request.method === 'HEAD') && !notScreens.test(request.path) && !/\.[a-z0-9]+$/i.test(request.path);
    if (!isScreen) return next();
    response.setHeader('cache-control', 'no-cache');
    response.sendFile(page);
  });
}
