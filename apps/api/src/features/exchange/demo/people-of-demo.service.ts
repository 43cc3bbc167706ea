import type { INestApplicationContext } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { AdmitPerson } from '../../../platform/identity/members/admit-person.service.js';
import { DEMO_PASSWORD } from '../../../platform/identity/members/demo-doors.js';
import { members } from '../../../platform/identity/members/member.repository.js';
import { KeptRecords } from '../../../platform/records/kept-records.js';
import type { KeptRow } from '../../../platform/records/kept-row.js';
import { SetVisitTerms } from '../../fieldwork/month-planning/visit-terms/set-visit-terms.service.js';
import type { DemoCompany, DemoCrew, DemoMember } from './demo-world.js';
import { demo } from './demo.repository.js';

type Crew = KeptRow & Omit<DemoCrew, 'members'>;

/** Lets the people of a company of the demonstration in, puts them into crews, and says how its properties are visited. */
export async function admitPeople(app: INestApplicationContext, tx: OrganizationTransaction, company: DemoCompany): Promise<void> {
  for (const member of company.members) await admit(app, tx, member);
  for (const { members: people, ...values } of company.crews) {
    const crew = await app.get(KeptRecords).create<Crew>(tx, 'crew', values);
    const memberIds = [];
    for (const person of people) memberIds.push(await demo.memberId(tx, person));
    await demo.addToCrew(tx, crew.id, memberIds);
  }
  for (const { properties, terms } of company.visits)
    for (const name of properties) await app.get(SetVisitTerms).run(tx, await demo.propertyId(tx, name), null, { ...terms });
}

async function admit(app: INestApplicationContext, tx: OrganizationTransaction, member: DemoMember): Promise<void> {
  const { name, email, role, language, client } = member;
  const personId = await app.get(AdmitPerson).run(tx, { name, email, language, password: DEMO_PASSWORD });
  await members.add(tx, { personId, role, clientId: client === undefined ? null : await demo.clientId(tx, client) });
}
