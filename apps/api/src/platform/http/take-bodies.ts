import type { NestExpressApplication } from '@nestjs/platform-express';
import express, { type NextFunction, type Request, type Response } from 'express';

/** Largest body of an operation: the hangs of a tour many times over. */
const largestOperation = '4mb';
/** Largest body of a plain route: a tour file, a CSV of a whole register, a scanned report. */
const largestFile = '20mb';

/** Reads bodies, each route those it takes, up to a limit; what cannot be read is answered in words, never with a stack. */
export function takeBodies(app: NestExpressApplication): void {
  app.use('/graphql', express.json({ limit: largestOperation }));
  app.use('/api/csv', express.raw({ type: ['text/csv', 'application/csv', 'application/octet-stream', 'text/plain'], limit: largestFile }));
  app.use('/api/reports', express.raw({ type: ['application/pdf', 'image/*'], limit: largestFile }));
  app.use('/api', express.json({ limit: largestFile }));
  app.use('/api', refuseForeignWrites);
  app.use(bodyFaults);
}

/** A form of another site cannot set this header. */
function refuseForeignWrites(request: Request, response: Response, next: NextFunction): void {
  if (request.method === 'GET' || request.method === 'HEAD' || request.headers['x-cartwright'] === '1') return next();
  response.status(403).json({ message: 'Send the header "x-cartwright: 1" with what you write.' });
}

function bodyFaults(
  fault: { type?: string; status?: number; message?: string; body?: string; limit?: number } | undefined,
  _request: Request,
  response: Response,
  next: NextFunction,
): void {
  if (!fault) return next();
  const say = (status: number, value: string, wanted: string) =>
    response
      .status(status)
      .json({ message: `Nothing was read: wanted ${wanted}.`, faults: [{ field: '(whole file)', row: 1, column: '', value, wanted }] });
  if (fault.type === 'entity.too.large') say(413, 'a larger file', `a file of at most ${Math.round((fault.limit ?? 0) / 1_048_576)} MB`);
  else if (fault.type === 'charset.unsupported' || fault.type === 'encoding.unsupported') say(415, 'another encoding', 'UTF-8');
  else if (fault.body !== undefined && /[\u0000\ufffd]/.test(fault.body.slice(0, 200)))
    say(400, 'UTF-16', 'JSON (RFC 8259) in UTF-8; save it again as UTF-8');
  else if ((fault.status ?? 500) < 500) say(400, (fault.message ?? '').slice(0, 100), 'JSON (RFC 8259) in UTF-8');
  else next(fault);
}
