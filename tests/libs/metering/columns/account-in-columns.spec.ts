import { accountOfColumns } from '@rillbook/metering/columns/account-of-columns.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inColumns, plainProperty } from '../../../support/worlds/in-columns.js';
import { someProperty } from '../../../support/worlds/random-world.mjs';

/** To the last bit, and in the same order: of two numbers that differ in a bit the texts differ. */
const text = (value: unknown) => JSON.stringify(value);

describe('an account in columns', () => {
  it('says what the account zone by zone says, to the last bit', () => {
    let [asked, compared, filled] = [0, 0, 0];
    fc.assert(
      fc.property(plainProperty, (input) => {
        asked += 1;
        const both = inColumns(input);
        if (!both) return;
        compared += 1;
        filled += Number(both.account.property.programmed.estimatedShare > 0);
        expect(text(accountOfColumns(both.columns))).toBe(text(both.account));
      }),
      { numRuns: 400 },
    );
    expect(compared).toBeGreaterThan(asked / 2);
    // Settings that are on record since a day of the month: what ran before it is filled in.
    expect(filled).toBeGreaterThan(0);
  });

  it('is not made of what is not of the usual kind, and says the same where it is made', () => {
    let [made, asked] = [0, 0];
    fc.assert(
      fc.property(someProperty, (input) => {
        const both = inColumns(input);
        asked += 1;
        made += Number(both !== null);
        if (both) expect(text(accountOfColumns(both.columns))).toBe(text(both.account));
        const hand = input.zones.some(({ handWatered, meterId }) => handWatered || meterId === 'none');
        if (hand) expect(both).toBeNull();
      }),
      { numRuns: 200 },
    );
    expect(made).toBeGreaterThan(0);
    expect(made).toBeLessThan(asked);
  });
});
