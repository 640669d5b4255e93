import type { RequestHandler } from 'express';
import { persistedOperations } from '#contracts/operations';
import type { Role } from '../sign-in/person.js';
import { type RequestContext, roleWords } from '../sign-in/signed-in.js';
import { answerRefused } from './answer-refused.js';

interface Sent {
  query?: unknown;
  extensions?: { persistedQuery?: unknown };
}

/**
 * The screens send the hash of an operation that they were built with (as Apollo's persisted queries do); its document stands here already. A document
 * of one's own is taken from those roles that the house lets send them, and from no stranger. One operation a request; what else is said about it
 * goes no further.
 */
export function listedOnly(ownOperations: readonly Role[]): RequestHandler {
  return (request: RequestContext['req'], response, next) => {
    if (request.method !== 'POST') {
      response.setHeader('allow', 'POST');
      return answerRefused(response, 405, 'BAD_REQUEST', 'Operations are sent by POST.');
    }
    const sent: unknown = request.body;
    if (Array.isArray(sent)) return answerRefused(response, 400, 'BAD_REQUEST', 'One operation a request: send them one after another.');
    if (typeof sent !== 'object' || sent === null)
      return answerRefused(response, 415, 'BAD_REQUEST', 'Operations are sent as application/json.');
    const { extensions, ...rest } = sent as Sent;
    request.body = rest;
    const listed = extensions?.persistedQuery;
    if (listed !== undefined && rest.query === undefined) {
      const hash = hashIn(listed);
      if (hash === undefined)
        return answerRefused(response, 400, 'BAD_REQUEST', 'Wanted of a persisted query: version 1 and the SHA-256 of its document.');
      const document = Object.hasOwn(persistedOperations, hash) ? persistedOperations[hash] : undefined;
      if (document === undefined)
        return answerRefused(response, 400, 'OPERATION_UNKNOWN', 'This page is of another version than the house. Load it again.');
      request.body = { ...rest, query: document };
      return next();
    }
    if (request.isWhoUnknown) return next();
    if (!request.signedIn) return answerRefused(response, 401, 'NOT_SIGNED_IN', 'Sign in first.');
    if (!ownOperations.includes(request.signedIn.role)) {
      const wanted = ownOperations.map((role) => roleWords[role]).join(' or ') || 'nobody in this house';
      return answerRefused(
        response,
        403,
        'NOT_ALLOWED',
        `Operations of one's own are for ${wanted}; send one that the screens are built with.`,
      );
    }
    next();
  };
}

function hashIn(listed: unknown): string | undefined {
  if (typeof listed !== 'object' || listed === null) return undefined;
  const { version, sha256Hash } = listed as { version?: unknown; sha256Hash?: unknown };
  return version === 1 && typeof sha256Hash === 'string' && /^(sha256:)?[0-9a-f]{64}$/.test(sha256Hash) ? sha256Hash : undefined;
}

/** The hash of an operation of the screens by its name, for programs that talk to the house as the screens do. */
export function hashOfOperation(name: string): string {
  const found = Object.entries(persistedOperations).find(([, document]) => new RegExp(`^(query|mutation) ${name}\\b`).test(document));
  if (!found) throw new Error(`the screens have no operation called ${name}`);
  return found[0];
}
