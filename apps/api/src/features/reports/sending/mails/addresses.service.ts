import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { clientOfId } from '../../../portfolio/clients/client.loader.js';
import { mailStops } from './mail-stop.repository.js';

/** A client's addresses, each once whatever the case of its letters: those that are mailed, and those that want no more. */
export interface Addresses {
  readonly mailed: readonly string[];
  readonly stopped: readonly string[];
}

export async function addressesOf(tx: OrganizationTransaction, clientId: string): Promise<Addresses> {
  const client = await clientOfId.of(tx).load(clientId);
  const typed = (client?.emails ?? []).map((email) => email.trim()).filter(Boolean);
  const letters = typed.map((email) => email.toLowerCase());
  const emails = typed.filter((_, at) => letters.indexOf(letters[at]!) === at);
  const stops = new Set((await mailStops.of(tx, emails)).map(({ email }) => email));
  const isStopped = (email: string): boolean => stops.has(email.toLowerCase());
  return { mailed: emails.filter((email) => !isStopped(email)), stopped: emails.filter(isStopped) };
}
