import { Module } from '@nestjs/common';
import { ClientResolver } from './clients/client.resolver.js';
import { MemberClientFieldResolver } from './clients/member-client.field-resolver.js';

/** Clients, properties and what stands on them. */
@Module({ providers: [ClientResolver, MemberClientFieldResolver] })
export class PortfolioModule {}
