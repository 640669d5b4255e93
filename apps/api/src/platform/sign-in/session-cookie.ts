import type { Request, Response } from 'express';

const cookieName = 'cartwright_session';

/** The session cookie: http-only, same site, gone when the session ends. */
export function setSessionCookie(response: Response, token: string, expiresAt: Date, secure: boolean): void {
  response.cookie(cookieName, token, { httpOnly: true, sameSite: 'strict', secure, expires: expiresAt, path: '/' });
}

export function clearSessionCookie(response: Response): void {
  response.clearCookie(cookieName, { httpOnly: true, sameSite: 'strict', path: '/' });
}

export function sessionTokenOf(request: Request): string | undefined {
  const pair = (request.headers.cookie ?? '')
    .split(';')
    .map((each) => each.trim())
    .find((each) => each.startsWith(`${cookieName}=`));
  return pair?.slice(cookieName.length + 1);
}
