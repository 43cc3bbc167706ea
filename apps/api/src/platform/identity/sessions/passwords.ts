import { hash, verify } from '@node-rs/argon2';
import { platformProblems } from '../../problems/platform.problems.js';

// argon2id with 19 MiB and two passes: OWASP Password Storage Cheat Sheet, first recommendation.
const COST = { memoryCost: 19_456, timeCost: 2, parallelism: 1 };
const LEAST = 8;
const MOST = 200;

/** The most common passwords, all of eight characters or more, that any guessing starts with (common practice; from memory). */
const COMMON = new Set([
  'password',
  '12345678',
  '123456789',
  '1234567890',
  'qwertyuiop',
  'password1',
  'password123',
  'iloveyou',
  'sunshine',
  'princess',
  'football',
  'baseball',
  'superman',
  'trustno1',
  'letmein1',
  'welcome1',
  'qwerty123',
  '11111111',
  '00000000',
  'abcd1234',
  'passw0rd',
  'changeme',
  'rillbook',
]);

/** Refuses a password that is too short, too long or among the first that anybody guesses. */
export function judgePassword(wished: string): void {
  const refuse = (expected: string) => platformProblems.valueRefused({ field: 'password', found: `${wished.length} characters`, expected });
  if (wished.length < LEAST) throw refuse(`at least ${LEAST} characters`);
  if (wished.length > MOST) throw refuse(`at most ${MOST} characters`);
  if (COMMON.has(wished.toLowerCase())) throw refuse('one that is not among the most common');
}

/** Hashes a password that has been judged. */
export function hashPassword(wished: string): Promise<string> {
  judgePassword(wished);
  return hash(wished, COST);
}

let decoy: Promise<string> | undefined;

/** Whether a password fits. A stranger's address costs as much time as a known one's. */
export async function passwordFits(kept: string | null, offered: string): Promise<boolean> {
  decoy ??= hash('nobody has this password', COST);
  const fits = await verify(kept ?? (await decoy), offered.slice(0, MOST));
  return kept !== null && fits;
}
