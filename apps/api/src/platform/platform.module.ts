import { type DynamicModule, Global, type MiddlewareConsumer, Module, type NestModule } from '@nestjs/common';
import { APP_FILTER, APP_GUARD, APP_INTERCEPTOR } from '@nestjs/core';
import { DataSource } from 'typeorm';
import { Door } from './identity/door/door.middleware.js';
import { PermissionGuard } from './identity/door/permission.guard.js';
import { identity } from './identity/identity.providers.js';
import { Sessions } from './identity/sessions/sessions.js';
import { Tries } from './identity/sessions/tries.js';
import { TransactionInterceptor } from './identity/door/transaction.interceptor.js';
import { FileStore } from './files/file-store.js';
import { HealthController } from './health.controller.js';
import { BackgroundJobResolver } from './jobs/background-job.resolver.js';
import { OrganizationClockFieldResolver } from './jobs/organization-clock.field-resolver.js';
import { Jobs } from './jobs/jobs.js';
import { Live } from './database/live.js';
import { ProblemFilter } from './problems/problem.filter.js';
import { Events } from './records/events.js';
import { KeptRecords } from './records/kept-records.js';

const parts = [Events, KeptRecords, Sessions, Tries, Jobs, FileStore, Live];

/** The floor: database, who is asking, problems, background work. Knows no feature. */
@Global()
@Module({})
export class PlatformModule implements NestModule {
  static on(source: DataSource): DynamicModule {
    return {
      module: PlatformModule,
      controllers: [HealthController],
      providers: [
        { provide: DataSource, useValue: source },
        ...parts,
        BackgroundJobResolver,
        OrganizationClockFieldResolver,
        ...identity,
        { provide: APP_GUARD, useClass: PermissionGuard },
        { provide: APP_FILTER, useClass: ProblemFilter },
        { provide: APP_INTERCEPTOR, useClass: TransactionInterceptor },
      ],
      exports: [DataSource, ...parts, ...identity],
    };
  }

  configure(consumer: MiddlewareConsumer): void {
    consumer.apply(Door).forRoutes('{*path}');
  }
}
