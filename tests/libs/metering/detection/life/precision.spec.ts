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
    { kind: 'unexplained use', decided: 4, ledToWork: 1, confirmed: 2, share: 0.75 },
    { kind: 'steady flow', decided: 1, ledToWork: 1, confirmed: 0, share: 1 },
  ]);
});
