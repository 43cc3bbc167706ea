import { createHash, randomBytes } from 'node:crypto';

const LINK = /([0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12})\.([A-Za-z0-9_-]{43})\/?$/;

/** What a link names: the organization to look in, and the hash of its secret. */
export interface InvitationLink {
  readonly organizationId: string;
  readonly tokenHash: Buffer;
}

const digest = (token: string): Buffer => createHash('sha256').update(token).digest();

/** A new secret and the path that carries it. */
export function newLink(organizationId: string): { link: string; tokenHash: Buffer } {
  const token = randomBytes(32).toString('base64url');
  return { link: `/invitation/${organizationId}.${token}`, tokenHash: digest(token) };
}

/** Reads a link, with or without what stands before its last part; null when it is none. */
export function readLink(link: string): InvitationLink | null {
  const [, organizationId, token] = LINK.exec(link.trim()) ?? [];
  return organizationId && token ? { organizationId, tokenHash: digest(token) } : null;
}
