import type { DataSource } from 'typeorm';
import type { ProblemLanguage } from '../problems/problem-sentence.js';

/** The language in which a person reads; English where nobody in person asks. */
export async function languageOf(source: DataSource, personId: string | null): Promise<ProblemLanguage> {
  if (personId === null) return 'en';
  const [person] = (await source.query('select language from person where id = $1', [personId])) as { language: ProblemLanguage }[];
  return person?.language ?? 'en';
}
