import type { NestExpressApplication } from '@nestjs/platform-express';
import type { DataSource } from 'typeorm';
import { makeApplication } from '../application.js';
import { entities } from '../entities.js';
import { appDataSource } from '../platform/database/data-source.js';
import { type DatabaseAddress, findDatabase } from '../platform/database/database-url.js';
import { migrate } from '../platform/database/migrate.js';

/** The product without its server, for one command. */
export interface OpenProduct {
  readonly app: NestExpressApplication;
  readonly source: DataSource;
  readonly database: DatabaseAddress;
}

/** Finds the database, brings it to this version and puts the product together on it; closes all in the end, whatever happens. */
export async function withProduct<T>(work: (product: OpenProduct) => Promise<T>, environment: NodeJS.ProcessEnv = process.env): Promise<T> {
  const database = await findDatabase(environment);
  try {
    await migrate(database.adminUrl, database.appUrl);
    return await onDatabase(database, work);
  } finally {
    await database.close();
  }
}

async function onDatabase<T>(database: DatabaseAddress, work: (product: OpenProduct) => Promise<T>): Promise<T> {
  const source = await appDataSource(database.appUrl, entities).initialize();
  try {
    const app = await makeApplication(source);
    try {
      await app.init();
      return await work({ app, source, database });
    } finally {
      await app.close();
    }
  } finally {
    await source.destroy();
  }
}
