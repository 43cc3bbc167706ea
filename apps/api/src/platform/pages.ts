import { existsSync } from 'node:fs';
import path from 'node:path';
import type { NestExpressApplication } from '@nestjs/platform-express';
import type { NextFunction, Request, Response } from 'express';

const built = path.resolve(import.meta.dirname, '../../../web/dist');
const index = path.join(built, 'index.html');
const YEAR_MS = 365 * 24 * 60 * 60 * 1000;

/** Paths that are never pages. */
const NOT_PAGES = /^\/(graphql|api|health|assets)(\/|$)/;

/** Serves the built web pages: named by content and kept for a year, and one page for every address a person can open. */
export function servePages(app: NestExpressApplication): void {
  if (!existsSync(index)) return;
  app.useStaticAssets(path.join(built, 'assets'), { prefix: '/assets/', immutable: true, maxAge: YEAR_MS });
  app.useStaticAssets(built, { index: false, maxAge: 0 });
  app.use((request: Request, response: Response, next: NextFunction) => {
    if (!['GET', 'HEAD'].includes(request.method) || NOT_PAGES.test(request.path) || !request.accepts('html')) return next();
    response.setHeader('Cache-Control', 'no-cache');
    response.sendFile(index);
  });
}
