// Metered - allowed = (metered - programmed) + (programmed - needed) + (needed - allowed) in 125,000 random properties'
// accounts and in each of their meters, wherever all four volumes exist (in more than 100,000). `npm run prove -- identity 1000000 SEED` takes
// another number and the seed of an earlier run.
import fc from 'fast-check';
import { computeMonthAccount } from '../../libs/metering/dist/account/compute-month-account.js';
import { identityMisses, someProperty } from '../support/worlds/random-world.mjs';

export const readsShared = false;

const ACCOUNTS = 125_000;
/** The identity is exact but for rounding: this much of the largest volume. [–] */
const ROUNDING = 1e-9;
/** Fewer would mean that the random worlds no longer have their four volumes. [–] */
const LEAST_COMPARED_SHARE = 0.8;

const number = (value) => value.toLocaleString('en-US');

export async function prove([accounts = ACCOUNTS, wish] = []) {
  const numRuns = Number(accounts);
  const seed = wish === undefined ? Date.now() % 2 ** 31 : Number(wish);
  if (!(numRuns > 0 && Number.isInteger(numRuns + seed)))
    throw new Error(`${accounts} ${wish ?? ''}: give a number of accounts and, if any, a whole number as seed`);
  const seen = { accounts: 0, properties: 0, meters: 0, largest: 0 };
  const ended = fc.check(
    fc.property(someProperty, (input) => judge(input, seen)),
    { seed, numRuns },
  );
  const says = `seed ${seed}; ${number(seen.accounts)} accounts; all four volumes in ${number(seen.properties)} properties and ${number(seen.meters)} meters; greatest miss ${seen.largest.toExponential(1)} of the largest volume`;
  if (ended.failed) throw new Error(`${says}\n${ended.errorInstance?.message}\n${JSON.stringify(ended.counterexample)}`);
  if (seen.properties < LEAST_COMPARED_SHARE * numRuns) throw new Error(`${says}\ntoo few have all four volumes to prove anything`);
  return says;
}

function judge(input, seen) {
  seen.accounts += 1;
  const [property, ...meters] = identityMisses(computeMonthAccount(input));
  for (const miss of [property, ...meters]) {
    if (miss === null) continue;
    if (!(miss <= ROUNDING)) throw new Error(`the gaps miss by ${miss} of the largest volume`);
    seen.largest = Math.max(seen.largest, miss);
  }
  seen.properties += Number(property !== null);
  seen.meters += meters.filter((miss) => miss !== null).length;
}
