import { platformProblems } from './platform.problems.js';

/** Refuses a word that is not among those allowed; null and undefined pass. */
export function wordOf(field: string, found: string | null | undefined, allowed: readonly string[]): void {
  if (found !== null && found !== undefined && !allowed.includes(found)) throw platformProblems.valueRefused({ field, found, expected: `one of ${allowed.join(', ')}` });
}

/** Refuses a number outside a range; null and undefined pass. */
export function numberWithin(field: string, found: number | null | undefined, least: number, most = Number.POSITIVE_INFINITY): void {
  if (found === null || found === undefined) return;
  if (!(found >= least && found <= most)) throw platformProblems.valueRefused({ field, found, expected: most === Number.POSITIVE_INFINITY ? `${least} or more` : `${least} to ${most}` });
}

/** Refuses a name that is empty or very long. */
export function nameGiven(field: string, found: string): void {
  if (!found.trim() || found.length > 200) throw platformProblems.valueRefused({ field, found: found.slice(0, 40), expected: 'a name of 1 to 200 characters' });
}
