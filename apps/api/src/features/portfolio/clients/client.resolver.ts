import { Args, ID, Query, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { keptThingResolver } from '../../../platform/kept-things/kept-thing.resolver.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { between, judgeValues, name } from '../../../platform/problems/judge-values.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { isUuid } from '../../../platform/records/uuid.js';
import { propertiesThatNeed } from '../properties/properties-that-need.service.js';
import { ClientRow } from './client.entity.js';
import { ClientInput } from './client.input.js';
import { clients } from './client.repository.js';
import { Client, showClient } from './client.type.js';

const EMAIL = /^[^\s@<>,;:"()[\]\\]{1,64}@[^\s@<>,;:"()[\]\\]+\.[^\s@<>,;:"()[\]\\.]{2,}$/;

const Kept = keptThingResolver({
  name: 'Client',
  row: ClientRow,
  type: Client,
  input: ClientInput,
  show: showClient,
  keep: (input) => ({
    name: input.name.trim(),
    emails: input.emails ?? [],
    language: input.language ?? null,
    units: input.units ?? null,
    notToExceed: input.notToExceed ?? null,
  }),
  judge: async (_, input) => {
    judgeValues(input, { name: name(), notToExceed: between(0, 1e8) });
    const wrong = input.emails?.find((email) => !EMAIL.test(email) || email.length > 254);
    if (wrong !== undefined)
      throw platformProblems.valueRefused({ field: 'emails', found: wrong.slice(0, 80), expected: 'an e-mail address' });
  },
  needs: (tx, id) => propertiesThatNeed(tx, 'clientId', id),
});

/** Clients: read, created, changed, retired. */
@Resolver(() => Client)
export class ClientResolver extends Kept {
  @Allow(Permission.ReadPortfolio)
  @Query(() => [Client], { name: 'clients' })
  async all(@Tx() tx: OrganizationTransaction): Promise<Client[]> {
    return (await clients.inUse(tx)).map(showClient);
  }

  @Allow(Permission.ReadPortfolio)
  @Query(() => Client, { name: 'client', nullable: true })
  async one(@Tx() tx: OrganizationTransaction, @Args('id', { type: () => ID }) id: string): Promise<Client | null> {
    const [row] = isUuid(id) ? await clients.ofIds(tx, [id]) : [];
    return row ? showClient(row) : null;
  }
}
