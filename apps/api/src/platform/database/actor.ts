/** The roles of the domain, most able first. */
export const ROLES = ['owner', 'office', 'crewLead', 'technician', 'client'] as const;
export type Role = (typeof ROLES)[number];

/** Who is asking, in which organization. Comes from a verified session or from the command line, never from an argument. */
export interface Actor {
  readonly organizationId: string;
  /** null for the command line and for background work */
  readonly personId: string | null;
  readonly memberId: string | null;
  readonly role: Role;
  /** the one client a member of role client belongs to */
  readonly clientId: string | null;
  /** how the deed came in, for the record of changes */
  readonly way: 'screen' | 'import' | 'job';
}

/** Background work and the command line act for the organization itself. */
export const organizationActor = (organizationId: string, way: 'import' | 'job'): Actor => ({
  organizationId,
  personId: null,
  memberId: null,
  role: 'owner',
  clientId: null,
  way,
});
