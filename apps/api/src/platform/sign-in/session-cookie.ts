import type { Request, Response } from 'express';

/** Over TLS: browsers take a name of this kind from this host alone, for all of it, and only with Secure (RFC 6265bis). */
const nameOf = (what: 'session' | 'device', secure: boolean): string => `${secure ? '__Host-' : ''}cartwright_${what}`;

/** As long as sessions stay on file. */
const deviceAge = 104 * 24 * 3_600_000;

/** The session cookie: http-only, same site, gone when the session ends. */
export function setSessionCookie(response: Response, token: string, expiresAt: Date, secure: boolean): void {
  response.cookie(nameOf('session', secure), token, { httpOnly: true, sameSite: 'strict', secure, expires: expiresAt, path: '/' });
}

export function clearSessionCookie(response: Response, secure: boolean): void {
  response.clearCookie(nameOf('session', secure), { httpOnly: true, sameSite: 'strict', secure, path: '/' });
}

/** By which a device that signed in is known again, whatever its address: it opens nothing, and outlives sessions as what is on file of them does. */
export function setDeviceCookie(response: Response, token: string, secure: boolean): void {
  response.cookie(nameOf('device', secure), token, { httpOnly: true, sameSite: 'strict', secure, maxAge: deviceAge, path: '/' });
}

/** Only under the name of this house's transport: a token that went over the wire in the clear opens nothing behind TLS. */
export function sessionTokenOf(request: Request, secure: boolean): string | undefined {
  return cookieOf(request, nameOf('session', secure));
}

export const deviceTokenOf = (request: Request, secure: boolean): string | undefined => cookieOf(request, nameOf('device', secure));

function cookieOf(request: Request, name: string): string | undefined {
  const pairs = (request.headers.cookie ?? '').split(';').map((each) => each.trim());
  return pairs.find((each) => each.startsWith(`${name}=`))?.slice(name.length + 1);
}
