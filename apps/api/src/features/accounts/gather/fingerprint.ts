import { hash } from 'node:crypto';

/** Of 128 bits: no two inputs of an organization meet by chance. */
const LETTERS = 22;

const known = new WeakMap<object, string>();

/** A digest of a text. */
export const digest = (text: string): string => hash('sha256', text, 'base64url').slice(0, LETTERS);

/** The fingerprint of a value. Of an object, which nobody may change, it is taken once: many months share their zones and controllers. */
export function fingerprint(value: unknown): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value ?? null);
  const present = known.get(value) ?? digest(JSON.stringify(value));
  known.set(value, present);
  return present;
}
