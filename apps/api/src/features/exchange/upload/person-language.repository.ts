import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import type { ProblemLanguage } from '../problems/problem-sentence.js';

/** The language in which a person reads; English where nobody in person asks. */
export async function languageOf(tx: OrganizationTransaction, personId: string | null): Promise<ProblemLanguage> {
  if (personId === null) return 'en';
  const [person] = await tx.query<{ language: ProblemLanguage }>('select language from person where id = $1', [personId]);
  return person?.language ?? 'en';
}
