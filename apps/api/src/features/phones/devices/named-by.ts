import { createHash } from 'node:crypto';

/** The same UUID for the same words: of version 8 (RFC 9562, section 5.8), whose digits mean what we say. */
export function namedBy(words: string): string {
  const hex = createHash('sha256').update(words).digest('hex');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-8${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
}
