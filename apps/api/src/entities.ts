import { ClientRow } from './features/portfolio/clients/client.entity.js';
import { PropertyRow } from './features/portfolio/properties/property.entity.js';
import { MemberRow } from './platform/identity/members/member.entity.js';
import { PersonRow } from './platform/identity/members/person.entity.js';
import { OrganizationItself } from './platform/identity/organizations/organization.entity.js';
import { BackgroundJobRow } from './platform/jobs/background-job.entity.js';
import { ChangeRow } from './platform/records/change.entity.js';

/** Every row class of the product. A test holds them against the database. */
export const entities = [BackgroundJobRow, ChangeRow, ClientRow, PropertyRow, MemberRow, OrganizationItself, PersonRow];
