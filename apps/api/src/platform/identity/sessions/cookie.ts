import type { Request, Response } from 'express';

const DAYS_30_MS = 30 * 24 * 60 * 60 * 1000;

/** Over https the name carries the browser's own promise that no other host or path can set it. */
const nameFor = (request: Request): string => (request.secure ? '__Host-rillbook' : 'rillbook');

/** The session token that a request carries, if any. */
export function tokenOf(request: Request): string | null {
  const name = nameFor(request);
  for (const part of (request.headers.cookie ?? '').split(';')) {
    const [key, value] = part.trim().split('=', 2);
    if (key === name && value) return value;
  }
  return null;
}

/** Hands the token to the browser: no script can read it, no other site's form sends it. */
export function giveToken(request: Request, response: Response, token: string): void {
  response.cookie(nameFor(request), token, { httpOnly: true, secure: request.secure, sameSite: 'lax', path: '/', maxAge: DAYS_30_MS });
}

export function takeToken(request: Request, response: Response): void {
  response.clearCookie(nameFor(request), { httpOnly: true, secure: request.secure, sameSite: 'lax', path: '/' });
}
