import 'reflect-metadata';
import { NestFactory } from '@nestjs/core';
import type { NestExpressApplication } from '@nestjs/platform-express';
import type { DataSource } from 'typeorm';
import { AppModule } from './app.module.js';
import { securityHeaders } from './platform/identity/door/security-headers.js';
import { servePages } from './platform/pages.js';
import { log } from './platform/problems/log.js';

const quiet = {
  log: () => undefined,
  warn: (message: unknown) => log.warn({ message }, 'nest'),
  error: (message: unknown, stack?: unknown) => log.error({ message, stack }, 'nest'),
};

/** Puts the product together on a database; it does not listen yet. Used by the server, the command line and the tests. */
export async function makeApplication(source: DataSource): Promise<NestExpressApplication> {
  const app = await NestFactory.create<NestExpressApplication>(AppModule.on(source), {
    logger: quiet,
    abortOnError: false,
    bodyParser: true,
  });
  app.disable('x-powered-by');
  app.set('trust proxy', 'loopback');
  app.useBodyParser('json', { limit: '1mb' });
  app.use(securityHeaders);
  servePages(app);
  app.enableShutdownHooks([]);
  return app;
}
