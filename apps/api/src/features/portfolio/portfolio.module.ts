import { Module } from '@nestjs/common';
import { ClientResolver } from './clients/client.resolver.js';

/** Clients, properties and what stands on them. */
@Module({ providers: [ClientResolver] })
export class PortfolioModule {}
