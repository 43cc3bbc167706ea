import type { FindingRow } from '../finding.entity.js';

/** Whether a finding is acknowledged and silent on a day: until a date, or until it clears. */
export function isSilenced(
  { acknowledgedAt, acknowledgedUntil }: Pick<FindingRow, 'acknowledgedAt' | 'acknowledgedUntil'>,
  today: string,
): boolean {
  return acknowledgedAt !== null && (acknowledgedUntil === null || acknowledgedUntil >= today);
}
