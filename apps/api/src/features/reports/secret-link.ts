import { createHash, randomBytes } from 'node:crypto';

const LINK = /^([0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12})\.([A-Za-z0-9_-]{43})$/;

/** What a link names: the organization to look in, and the hash of its secret. */
export interface SecretLink {
  readonly organizationId: string;
  readonly hash: Buffer;
}

const digest = (token: string): Buffer => createHash('sha256').update(token).digest();

/** A new secret, as it stands in a link, and the hash that is kept of it. */
export function newSecret(organizationId: string): { link: string; hash: Buffer } {
  const token = randomBytes(32).toString('base64url');
  return { link: `${organizationId}.${token}`, hash: digest(token) };
}

/** Reads what stands in a link; null when it is none. */
export function readSecret(link: string): SecretLink | null {
  const [, organizationId, token] = LINK.exec(link) ?? [];
  return organizationId && token ? { organizationId, hash: digest(token) } : null;
}
