import type { AccountInput } from '@rillbook/metering/account/account-input.js';
import type { MonthAccount, Volumes } from '@rillbook/metering/account/month-account.js';
import type fc from 'fast-check';

/** A property with up to three zones, one meter, one or more dated facts and random weather: all four volumes exist, unless a zone lacks them. */
export const someProperty: fc.Arbitrary<AccountInput>;

/** The largest of the four volumes, at least a litre: what a difference is measured by. */
export const largest: (volumes: Volumes) => number;

/**
 * By how much the three gaps miss metered less allowed, over the largest of the four volumes: of the property, then of each meter. Null where
 * metered less allowed is absent; not a number where it is there and a gap is not.
 */
export function identityMisses(account: MonthAccount): (number | null)[];
