import fc from 'fast-check';
import { expect, it } from 'vitest';
import { Fleet, type Step } from './fleet.js';

// Random histories of phones, a line that cuts, a server and an office. What must hold is written in fleet.ts.
// One in a hundred of them here; `npm run prove -- outbox-model` runs 100,000.
const HISTORIES = Number(process.env['RILLBOOK_HISTORIES'] ?? 1000);

const device = fc.nat(1);
const step: fc.Arbitrary<Step> = fc.oneof(
  { weight: 6, arbitrary: fc.record({ what: fc.constant('save' as const), device, subject: fc.nat(3), value: fc.nat(5) }) },
  { weight: 2, arbitrary: fc.record({ what: fc.constant('photo' as const), device }) },
  { weight: 2, arbitrary: fc.record({ what: fc.constant('withdraw' as const), device, subject: fc.nat(3) }) },
  {
    weight: 8,
    arbitrary: fc.record({
      what: fc.constant('send' as const),
      device,
      line: fc.constantFrom(
        'good' as const,
        'cut before' as const,
        'cut after' as const,
        'twice' as const,
        'reordered' as const,
        'server breaks' as const,
        'too large' as const,
        'half answered' as const,
      ),
    }),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      what: fc.constant('picture' as const),
      device,
      line: fc.constantFrom('good' as const, 'cut before' as const, 'cut after' as const),
    }),
  },
  { weight: 2, arbitrary: fc.record({ what: fc.constant('late copy' as const), nth: fc.nat(20) }) },
  {
    weight: 3,
    arbitrary: fc.record({ what: fc.constant('crash' as const), device, during: fc.constantFrom('rest' as const, 'sending' as const) }),
  },
  { weight: 1, arbitrary: fc.record({ what: fc.constant('full' as const), device, isFull: fc.boolean() }) },
  { weight: 1, arbitrary: fc.record({ what: fc.constant('clock' as const), device, days: fc.integer({ min: -3, max: 3 }) }) },
  { weight: 1, arbitrary: fc.record({ what: fc.constant('upgrade' as const), device }) },
  { weight: 2, arbitrary: fc.record({ what: fc.constant('office' as const), subject: fc.nat(3), value: fc.nat(5) }) },
  { weight: 1, arbitrary: fc.record({ what: fc.constant('again' as const), device }) },
  { weight: 1, arbitrary: fc.record({ what: fc.constant('passes' as const), days: fc.integer({ min: 1, max: 40 }) }) },
);

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
