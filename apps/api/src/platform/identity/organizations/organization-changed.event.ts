import type { OrganizationItself } from './organization.entity.js';

/** The organization's name, units, language or what opens a finding was changed. */
export class OrganizationChanged {
  constructor(readonly organization: OrganizationItself) {}
}
