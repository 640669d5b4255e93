import type { NestExpressApplication } from '@nestjs/platform-express';
import express, { type NextFunction, type Request, type RequestHandler, type Response } from 'express';
import { CONFIG, type Config } from '../config/config.js';
import { bodyInTime } from '../door/body-in-time.js';
import { boundAll, boundEach, boundStrangers } from '../door/bound-waiting.js';
import { boundHalfSent } from '../door/half-sent.js';
import { knowWhoAsks } from '../door/know-who-asks.js';
import { listedOnly } from '../door/listed-operations.js';
import { SessionStore } from '../sign-in/session-store.js';
import type { Role } from '../sign-in/person.js';
import { type RequestContext, forOthers } from '../sign-in/signed-in.js';

/** Largest body of somebody who is not signed in: an email and a password. */
const largestOfAStranger = '16kb';
/** Largest body of an operation: the hangs of a tour many times over. */
const largestOperation = '1mb';
/** Largest body of a file route: a tour file, a CSV of a whole register, a scanned report. */
const largestFile = '20mb';
/** Deepest values: a tour file has 9 levels. */
const deepestBody = 64;

/** How long a body may be on its way, milliseconds. */
const operationTime = 10_000;
const fileTime = 150_000;

/**
 * The way in, in this order: the house is not full; who asks is known; nobody has too much under way; a body comes in time and is not larger
 * than its route and its sender may have, and those of strangers that dawdle make room for those that come; an operation is one that is listed, or of somebody who may write their own. What cannot be read is
 * answered in words, never with a stack.
 */
export function takeBodies(app: NestExpressApplication): void {
  const { atOnce, ownOperations } = app.get<Config>(CONFIG);
  const way = ['/graphql', '/api'];
  app.use(way, keepNowhere, refuseOtherSites);
  app.use(way, boundAll(atOnce), knowWhoAsks(app.get(SessionStore)), boundEach(atOnce));
  const [halfSent, strangers] = [boundHalfSent(atOnce.halfSent), boundStrangers(atOnce, app.get(SessionStore))];
  app.use('/graphql', halfSent, bodyInTime(operationTime), byWho(json(largestOfAStranger), json(largestOperation)));
  app.use('/graphql', strangers, listedOnly(ownOperations));
  app.use('/api', refuseForeignWrites, refuseStrangersWrites, strangers, halfSent, bodyInTime(fileTime));
  app.use(
    ['/api/csv', '/api/imports'],
    express.raw({ type: ['text/csv', 'application/csv', 'application/octet-stream', 'text/plain'], limit: largestFile }),
  );
  app.use(['/api/reports', '/api/papers', '/api/pictures'], express.raw({ type: ['application/pdf', 'image/*'], limit: largestFile }));
  app.use('/api/tours/file', refuseOtherRoles(['system']), json(largestFile));
  app.use('/api', json(largestOfAStranger));
  app.use(bodyFaults);
}

const json = (limit: string): RequestHandler => express.json({ limit, verify: (_request, _response, bytes) => mustBeFlat(bytes) });

const byWho =
  (stranger: RequestHandler, signedIn: RequestHandler): RequestHandler =>
  (request: RequestContext['req'], response, next) =>
    void (request.signedIn ? signedIn : stranger)(request, response, next);

/** Brackets in brackets, counted before they are read: whoever walks values walks them by calling itself. */
function mustBeFlat(bytes: Buffer): void {
  let depth = 0;
  let inText = false;
  for (let at = 0; at < bytes.length; at++) {
    const byte = bytes[at];
    if (inText) {
      if (byte === 0x5c) at++;
      else if (byte === 0x22) inText = false;
    } else if (byte === 0x22) inText = true;
    else if (byte === 0x7b || byte === 0x5b) {
      if (++depth > deepestBody) throw Object.assign(new Error(`values deeper than ${deepestBody} levels`), { status: 400 });
    } else if (byte === 0x7d || byte === 0x5d) depth--;
  }
}

/** What is answered to somebody is kept by no browser and by nothing in between; routes that may be kept say so themselves. */
const keepNowhere: RequestHandler = (_request, response, next) => {
  response.setHeader('cache-control', 'no-store');
  next();
};

/**
 * Browsers say from where a page asks (Fetch Metadata; to addresses that they do not trust, the origin alone): pages of other sites write nothing, whatever
 * cookie goes with it.
 */
function refuseOtherSites(request: Request, response: Response, next: NextFunction): void {
  const from = request.headers['sec-fetch-site'];
  if (request.method === 'GET' || request.method === 'HEAD' || from === 'same-origin' || from === 'none') return next();
  if (from === undefined && isOwnOrigin(request)) return next();
  const message = 'This was asked by a page of another site. Nothing was done.';
  response.status(403).json({ message, errors: [{ message, extensions: { code: 'NOT_ALLOWED' } }] });
}

/** A program says no origin. A proxy may leave the port out of the host that it passes on. */
function isOwnOrigin({ headers: { origin, host = '' } }: Request): boolean {
  if (origin === undefined) return true;
  if (!URL.canParse(origin)) return false;
  const asked = new URL(origin);
  return asked.host === host || asked.hostname === host;
}

/** A form of another site cannot set this header. */
function refuseForeignWrites(request: Request, response: Response, next: NextFunction): void {
  if (request.method === 'GET' || request.method === 'HEAD' || request.headers['x-cartwright'] === '1') return next();
  response.status(403).json({ message: 'Send the header "x-cartwright: 1" with what you write.' });
}

/** Nothing is written here by somebody who is not signed in: their bodies are not even read. */
function refuseStrangersWrites(request: RequestContext['req'], response: Response, next: NextFunction): void {
  if (request.method === 'GET' || request.method === 'HEAD' || request.signedIn || request.isWhoUnknown) return next();
  response.status(401).json({ message: 'Sign in first.' });
}

/** A large body that its sender may not send is not read. The route says the same again, by its own permission. */
function refuseOtherRoles(allowed: readonly Role[]): RequestHandler {
  return (request: RequestContext['req'], response, next) => {
    const role = request.signedIn?.role;
    if (role === undefined || allowed.includes(role)) return next();
    response.status(403).json({ message: forOthers(allowed, role) });
  };
}

function bodyFaults(
  fault: { type?: string; status?: number; message?: string; body?: string; limit?: number } | undefined,
  request: Request,
  response: Response,
  next: NextFunction,
): void {
  if (!fault) return next();
  if (response.headersSent) return;
  // Rows are what a CSV file has; a tour file and an operation are one whole.
  const place = request.originalUrl.startsWith('/graphql')
    ? { field: '(whole operation)' }
    : { field: '(whole file)', ...(/^\/api\/(csv|imports)\b/.test(request.originalUrl) ? { row: 1, column: '' } : {}) };
  const say = (status: number, value: string, wanted: string) => {
    const message = `Nothing was read: wanted ${wanted}.`;
    response.status(status).json({
      message,
      faults: [{ ...place, value, wanted }],
      errors: [{ message, extensions: { code: 'BAD_REQUEST' } }],
    });
  };
  const isOperation = place.field === '(whole operation)';
  if (fault.type === 'entity.too.large')
    say(413, 'something larger', sizeInWords(fault.limit ?? 0, isOperation ? 'an operation' : 'a file'));
  else if (fault.type === 'charset.unsupported' || fault.type === 'encoding.unsupported') say(415, 'another encoding', 'UTF-8');
  else if (/^(\ufffd\ufffd|[^\0]\0[^\0]\0|\0[^\0]\0[^\0])/.test(fault.body ?? ''))
    say(400, 'UTF-16', 'JSON (RFC 8259) in UTF-8; save it again as UTF-8');
  else if (fault.body?.includes('\0')) say(400, 'an empty byte (NUL)', 'JSON (RFC 8259), which is text alone');
  else if (fault.body?.includes('\ufffd')) say(400, 'another encoding', 'JSON (RFC 8259) in UTF-8; save it again as UTF-8');
  else if ((fault.status ?? 500) < 500) say(400, (fault.message ?? '').slice(0, 100), 'JSON (RFC 8259) in UTF-8');
  else next(fault);
}

const sizeInWords = (bytes: number, what: string): string =>
  `${what} of at most ${bytes < 1_048_576 ? `${Math.round(bytes / 1024)} KB` : `${Math.round(bytes / 1_048_576)} MB`}`;
