import type { Request, Response } from 'express';

const plainName = 'cartwright_session';
/** Over TLS: browsers take a name of this kind from this host alone, for all of it, and only with Secure (RFC 6265bis). */
const secureName = '__Host-cartwright_session';

/** The session cookie: http-only, same site, gone when the session ends. */
export function setSessionCookie(response: Response, token: string, expiresAt: Date, secure: boolean): void {
  response.cookie(secure ? secureName : plainName, token, { httpOnly: true, sameSite: 'strict', secure, expires: expiresAt, path: '/' });
}

export function clearSessionCookie(response: Response, secure: boolean): void {
  response.clearCookie(secure ? secureName : plainName, { httpOnly: true, sameSite: 'strict', secure, path: '/' });
}

/** Only under the name of this house's transport: a token that went over the wire in the clear opens nothing behind TLS. */
export function sessionTokenOf(request: Request, secure: boolean): string | undefined {
  const name = `${secure ? secureName : plainName}=`;
  const pairs = (request.headers.cookie ?? '').split(';').map((each) => each.trim());
  return pairs.find((each) => each.startsWith(name))?.slice(name.length);
}
