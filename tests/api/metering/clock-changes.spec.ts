import { expect, test } from 'vitest';

/** The proof is plain JavaScript over what was built: nothing but running it tells that it still fits the product. */
const DAYLIGHT_SAVING = '../../prove/daylight-saving.mjs';

test('usage over every change of clocks of eleven years by half an hour is kept whole, whichever way it comes', async () => {
  const { prove } = (await import(DAYLIGHT_SAVING)) as { prove(zones: readonly string[]): Promise<string> };
  expect(await prove(['Australia/Lord_Howe'])).toContain(
    '22 changes, 66 feeds, 15,862 rows in 330 days: merged twice the same rows and sums',
  );
});
