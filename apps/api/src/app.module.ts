import { type DynamicModule, Module } from '@nestjs/common';
import type { DataSource } from 'typeorm';
import { AccountsModule } from './features/accounts/accounts.module.js';
import { ExchangeModule } from './features/exchange/exchange.module.js';
import { FindingsModule } from './features/findings/findings.module.js';
import { MeteringModule } from './features/metering/metering.module.js';
import { FieldworkModule } from './features/fieldwork/fieldwork.module.js';
import { OverviewModule } from './features/overview/overview.module.js';
import { PhonesModule } from './features/phones/phones.module.js';
import { PlansModule } from './features/plans/plans.module.js';
import { PortfolioModule } from './features/portfolio/portfolio.module.js';
import { ReportsModule } from './features/reports/reports.module.js';
import { WeatherModule } from './features/weather/weather.module.js';
import { SettingsModule } from './features/settings/settings.module.js';
import { graphql } from './platform/graphql.module.js';
import { PlatformModule } from './platform/platform.module.js';

const features = [
  PortfolioModule,
  WeatherModule,
  MeteringModule,
  SettingsModule,
  AccountsModule,
  FindingsModule,
  PlansModule,
  FieldworkModule,
  PhonesModule,
  OverviewModule,
  ReportsModule,
  ExchangeModule,
];

/** The only file that names every feature. */
@Module({})
export class AppModule {
  static on(source: DataSource): DynamicModule {
    return { module: AppModule, imports: [PlatformModule.on(source), graphql(), ...features] };
  }
}
