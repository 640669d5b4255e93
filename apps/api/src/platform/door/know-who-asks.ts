import type { RequestHandler } from 'express';
import type { SessionStore } from '../sign-in/session-store.js';
import type { RequestContext } from '../sign-in/signed-in.js';

/** Who asks is looked up before a body is read: what is taken from a person is not taken from a stranger. */
export function knowWhoAsks(sessions: SessionStore): RequestHandler {
  return async (request: RequestContext['req'], _response, next) => {
    try {
      const found = await sessions.find(request);
      if (found) request.signedIn = found;
    } catch {
      // The database is away: the guard asks again, and says what is the matter.
      request.isWhoUnknown = true;
    }
    next();
  };
}
