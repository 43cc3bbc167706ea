import fc from 'fast-check';
import { expect, it } from 'vitest';
import { Fleet } from './fleet.js';
import { step } from './step.js';

// Random histories of phones, a line that cuts, a server and an office. What must hold is written in fleet.ts.
// One in a hundred of them here; `npm run prove -- outbox-model` runs 100,000.
const HISTORIES = Number(process.env['RILLBOOK_HISTORIES'] ?? 1000);

it(`no record is lost or doubled in ${HISTORIES} histories, the phones converge, and every conflict is seen`, () => {
  let conflicts = 0;
  let deliveries = 0;
  fc.assert(
    fc.property(fc.array(step, { minLength: 1, maxLength: 40 }), (steps) => {
      const fleet = new Fleet(2);
      for (const one of steps) fleet.do(one);
      fleet.quiet();
      fleet.judge();
      conflicts += fleet.conflicts;
      deliveries += fleet.deliveries;
    }),
    { numRuns: HISTORIES },
  );
  // A model in which nothing ever went wrong would prove nothing.
  expect(conflicts).toBeGreaterThan(HISTORIES / 20);
  expect(deliveries).toBeGreaterThan(HISTORIES);
}, 3_600_000);

it('would notice a server that forgets what it had done', () => {
  const fleet = new Fleet(1, { forgets: true });
  fleet.do({ what: 'save', device: 0, subject: 0, value: 1 });
  fleet.do({ what: 'send', device: 0, line: 'twice' });
  fleet.quiet();
  expect(() => fleet.judge()).toThrow(/done 2 times/);
});
