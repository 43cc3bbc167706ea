import type { Role } from '../database/actor.js';

/** What an operation needs. Each resolver and controller method names one, or says why it is public. */
export enum Permission {
  /** own session, own language: whoever is signed in */
  BeSignedIn = 'be signed in',
  ManageMembers = 'manage members',
  ManageOrganization = 'manage organization',
  ReadPortfolio = 'read portfolio',
  WritePortfolio = 'write portfolio',
  /** one property, within the person's scope */
  ReadProperty = 'read property',
  ReadFindings = 'read findings',
  DecideFindings = 'decide findings',
  ReadRoutes = 'read routes',
  AssignWork = 'assign work',
  /** all crews and days of a month */
  PlanMonths = 'plan months',
  ApproveWork = 'approve work',
  RecordFieldwork = 'record fieldwork',
  CloseOthersStops = "close others' stops",
  Exchange = 'import and export',
  ReadReports = 'read reports',
  WriteReports = 'write reports',
}

const technician = [Permission.BeSignedIn, Permission.ReadProperty, Permission.ReadRoutes, Permission.RecordFieldwork];
const crewLead = [...technician, Permission.AssignWork, Permission.CloseOthersStops];
const office = [
  ...crewLead,
  Permission.ReadPortfolio,
  Permission.WritePortfolio,
  Permission.ReadFindings,
  Permission.DecideFindings,
  Permission.PlanMonths,
  Permission.ApproveWork,
  Permission.Exchange,
  Permission.ReadReports,
  Permission.WriteReports,
];

/** What each role may do. */
export const PERMISSIONS: Readonly<Record<Role, readonly Permission[]>> = {
  owner: [...office, Permission.ManageMembers, Permission.ManageOrganization],
  office,
  crewLead,
  technician,
  client: [Permission.BeSignedIn, Permission.ReadProperty, Permission.ReadReports],
};

/** Whether a role includes a permission. */
export const roleIncludes = (role: Role, permission: Permission): boolean => PERMISSIONS[role].includes(permission);
