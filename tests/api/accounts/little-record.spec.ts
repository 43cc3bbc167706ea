import type { AccountZone } from '@rillbook/metering/account/account-input.js';
import { describe, expect, it } from 'vitest';
import { withTypicalFlows } from '../../../apps/api/src/features/accounts/evidence/typical-flows.js';
import { handLitresPerDay } from '../../../apps/api/src/features/accounts/evidence/zones-of-meter.js';
import type { ZoneFact } from '../../../apps/api/src/features/accounts/gather/property-facts.js';

const zone = (changes: Partial<AccountZone>): AccountZone =>
  ({
    id: 'z1',
    meterId: null,
    controllerId: 'c1',
    areaM2: 100,
    flowLPerMin: 20,
    handWatered: false,
    handLitresPerWeek: null,
    ...changes,
  }) as AccountZone;
const fact = (id: string, method: ZoneFact['method']) => ({ id, method }) as ZoneFact;

describe('zones whose flow nobody wrote down', () => {
  it('run at what is typical of their method over their area, those on record as they are', () => {
    const zones = [zone({}), zone({ id: 'z2', flowLPerMin: null })];
    const typical = withTypicalFlows(zones, [fact('z1', 'spray'), fact('z2', 'spray')]);
    // 1.5 in/h over 100 m2: 38.1 mm/h, 3,810 L an hour.
    expect(typical?.map(({ flowLPerMin }) => flowLPerMin)).toEqual([20, expect.closeTo(3810 / 60, 9)]);
  });

  it('are left as they are where every flow is on record, no controller runs them, or there are none', () => {
    expect(withTypicalFlows([zone({})], [])).toBeNull();
    expect(withTypicalFlows([zone({ flowLPerMin: null, controllerId: null })], [])).toBeNull();
    expect(withTypicalFlows(null, [])).toBeNull();
  });
});

describe('water by hand', () => {
  const hose = zone({ handWatered: true, handLitresPerWeek: 700 });

  it('comes from the meter of its zone, or from the only one', () => {
    expect(handLitresPerDay([zone({}), hose], 'm1', 1)).toBe(100);
    expect(handLitresPerDay([{ ...hose, meterId: 'm1' }], 'm1', 2)).toBe(100);
    expect(handLitresPerDay([{ ...hose, meterId: 'm2' }], 'm1', 2)).toBe(0);
  });

  it('is no meter of several where nobody said which, nor of any where it is not metered', () => {
    expect(handLitresPerDay([hose], 'm1', 2)).toBe(0);
    expect(handLitresPerDay([{ ...hose, meterId: 'none' }], 'm1', 1)).toBe(0);
    expect(handLitresPerDay([zone({ handWatered: true })], 'm1', 1)).toBe(0);
  });
});
