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

it('would notice a phone that waits without end for an answer', () => {
  const fleet = new Fleet(1, { waits: true });
  fleet.do({ what: 'save', device: 0, subject: 0, value: 1 });
  fleet.do({ what: 'send', device: 0, line: 'hangs' });
  fleet.quiet();
  expect(() => fleet.judge()).toThrow(/still sending/);
});

it('would notice a phone that blames a whole batch for the one record on which the server breaks', () => {
  const judged = (blamesAll: boolean) => {
    const fleet = new Fleet(1, { blamesAll });
    fleet.do({ what: 'save', device: 0, subject: 0, value: 1 });
    fleet.do({ what: 'poison', device: 0 });
    fleet.do({ what: 'save', device: 0, subject: 1, value: 1 });
    fleet.quiet();
    return () => fleet.judge();
  };
  expect(judged(true)).toThrow(/still refused/);
  expect(judged(false)).not.toThrow();
});

it('would notice a phone that says nothing of an arrival that had left when it was taken back', () => {
  const judged = (keepsQuiet: boolean) => {
    const fleet = new Fleet(1, { keepsQuiet });
    fleet.do({ what: 'arrive', device: 0, stop: 0 });
    fleet.do({ what: 'send', device: 0, line: 'cut after' });
    fleet.do({ what: 'take back', device: 0, stop: 0 });
    fleet.quiet();
    return () => fleet.judge();
  };
  expect(judged(true)).toThrow(/stop 0 is visited, and was not/);
  expect(judged(false)).not.toThrow();
});
