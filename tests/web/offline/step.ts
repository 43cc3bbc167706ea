import fc from 'fast-check';
import type { Step } from './fleet.js';

const device = fc.nat(1);
/** What can happen, the ordinary oftener than the rare; the real stack is asked the same. */
export const step: fc.Arbitrary<Step> = fc.oneof(
  { weight: 8, arbitrary: fc.record({ what: fc.constant('save' as const), device, subject: fc.nat(3), value: fc.nat(5) }) },
  { weight: 2, arbitrary: fc.record({ what: fc.constant('photo' as const), device }) },
  { weight: 1, arbitrary: fc.record({ what: fc.constant('poison' as const), device }) },
  { weight: 2, arbitrary: fc.record({ what: fc.constant('withdraw' as const), device, subject: fc.nat(3) }) },
  { weight: 3, arbitrary: fc.record({ what: fc.constantFrom('arrive' as const, 'take back' as const), device, stop: fc.nat(1) }) },
  { weight: 1, arbitrary: fc.record({ what: fc.constant('work' as const), device, stop: fc.constant(1) }) },
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
        'hangs' as const,
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
  { weight: 3, arbitrary: fc.record({ what: fc.constant('office' as const), subject: fc.nat(3), value: fc.nat(5) }) },
  { weight: 1, arbitrary: fc.record({ what: fc.constant('again' as const), device }) },
  { weight: 1, arbitrary: fc.record({ what: fc.constant('passes' as const), days: fc.integer({ min: 1, max: 40 }) }) },
);
