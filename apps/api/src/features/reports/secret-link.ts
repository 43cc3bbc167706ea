import { createHash, createHmac, randomBytes } from 'node:crypto';

const LINK = /^([0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12})\.([A-Za-z0-9_-]{43})$/;

/** What a link names: the organization to look in, and the hash of its secret. */
export interface SecretLink {
  readonly organizationId: string;
  readonly hash: Buffer;
}

const digest = (token: string): Buffer => createHash('sha256').update(token).digest();

/** A secret as it stands in a link, and the hash that is kept of it. */
interface MadeSecret {
  readonly link: string;
  readonly hash: Buffer;
}

const asLink = (organizationId: string, token: string): MadeSecret => ({ link: `${organizationId}.${token}`, hash: digest(token) });

/** A new secret. */
export const newSecret = (organizationId: string): MadeSecret => asLink(organizationId, randomBytes(32).toString('base64url'));

/**
 * The secret of one name and one salt: whoever sends the name again is told the same link. Neither alone gives the link, and of the name only
 * its hash is kept, so what is kept does not open the report.
 */
export const secretOf = (organizationId: string, { salt, name }: { readonly salt: Buffer; readonly name: string }): MadeSecret =>
  asLink(organizationId, createHmac('sha256', salt).update(name).digest('base64url'));

/** What is kept of a name. */
export const hashOfName = (name: string): Buffer => digest(name);

/** Reads what stands in a link; null when it is none. */
export function readSecret(link: string): SecretLink | null {
  const [, organizationId, token] = LINK.exec(link) ?? [];
  return organizationId && token ? { organizationId, hash: digest(token) } : null;
}
