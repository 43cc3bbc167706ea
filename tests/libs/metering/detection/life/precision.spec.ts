import { type DecidedFinding, precisionByKind } from '@rillbook/metering/detection/life/precision.js';
import { expect, it } from 'vitest';

const decided = (given: Partial<DecidedFinding> = {}): DecidedFinding => ({
  kind: 'unexplained use',
  hadWork: false,
  state: 'dismissed',
  dismissedReason: 'not useful',
  ...given,
});

it('counts by kind what led to work or was confirmed, of what was decided', () => {
  expect(precisionByKind([])).toEqual([]);
  const findings = [
    decided(),
    decided({ dismissedReason: 'client wants it' }),
    decided({ state: 'resolved', dismissedReason: null }),
    decided({ state: 'resolved', dismissedReason: null, hadWork: true }),
    decided({ kind: 'steady flow', state: 'in work', dismissedReason: null }),
  ];
  expect(precisionByKind(findings)).toEqual([
    { kind: 'unexplained use', decided: 4, ledToWork: 1, confirmed: 2, share: 0.75, isSeldomUseful: false },
    { kind: 'steady flow', decided: 1, ledToWork: 1, confirmed: 0, share: 1, isSeldomUseful: false },
  ]);
});

it('marks a kind of which less than half was worth a look, where enough were decided to say so', () => {
  const seldom = (useless: number, useful: number) =>
    precisionByKind([
      ...Array.from({ length: useless }, () => decided()),
      ...Array.from({ length: useful }, () => decided({ state: 'resolved', dismissedReason: null })),
    ])[0]?.isSeldomUseful;
  expect(seldom(5, 3)).toBe(true);
  expect(seldom(4, 4)).toBe(false);
  expect(seldom(7, 0)).toBe(false);
  expect(seldom(8, 0)).toBe(true);
});
