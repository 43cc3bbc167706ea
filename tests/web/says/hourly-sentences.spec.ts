import { settleEpisodes } from '@rillbook/metering/detection/episodes/settle-episodes.js';
import { judgeHourly } from '@rillbook/metering/detection/hourly/judge-hourly.js';
import { describe, expect, it } from 'vitest';
import { findingSays } from '../../../apps/api/src/features/exchange/export/outputs/finding-says.js';
import { findingSentence } from '../../../apps/web/src/says/finding-sentence.js';
import { type Fault, simulatedMeter } from '../../libs/metering/detection/hourly/simulated-meter.mjs';
import { sayingOf } from './saying-of.js';

const FROM = { fromDay: 50 };

/** A fault for each thing that hours say. */
const FAULTS: Readonly<Record<string, Fault>> = {
  'steady flow': { steady: { ...FROM, litresPerMinute: 4 } },
  'off-schedule run': { offSchedule: { ...FROM, clockMinute: 1320, minutes: 40, everyDays: 1, litresPerMinute: 50 } },
  'zone flow changed': { zone: { ...FROM, zone: 1, factor: 1.7 } },
  'not delivering zone': { zone: { ...FROM, zone: 1, factor: 0 } },
  'not delivering pressure': { allZones: { ...FROM, factor: 0.6 } },
  'not delivering runs': { allZones: { ...FROM, factor: 0 } },
  'unexplained use': { duringRuns: { ...FROM, share: 0.5 } },
};

describe('what the judges of hours give is said whole', () => {
  it.each(Object.entries(FAULTS))('%s, on the screen in both languages and in the export', (code, fault) => {
    const wish = { seed: 1003, firstDay: 20190, days: 72, zones: 4, everyDays: 1, sensor: false, pauses: false, missingShare: 0, fault };
    const { evidence } = simulatedMeter({ ...wish, sizeMm: 20 });
    const found = settleEpisodes(judgeHourly(evidence)).find(({ says }) => says.code === code);
    if (!found) throw new Error(`${code} was not found`);
    const exported = findingSays({ kind: found.kind, controller: null, zones: ['Lawn'], says: found.says });
    const said = [...(['en', 'es'] as const).map((language) => findingSentence(sayingOf(language), found.says)), exported];
    for (const sentence of said) {
      expect(sentence).toMatch(/^.{30,}\.$/);
      expect(sentence).not.toMatch(/[–?{}]|unknown|undefined|NaN|none/);
    }
  });

  it('names together the zones of which it is one', () => {
    const details = { zoneId: null, zoneIds: ['z1', 'z2'], ratio: 1.6, litresPerMinute: 60, usualLitresPerMinute: 37 };
    const says = { code: 'zone flow changed', details };
    expect(findingSentence(sayingOf('en'), says)).toMatch(/^.+ or .+ now passes /);
    expect(findingSentence(sayingOf('es'), says)).toMatch(/^Por .+ o .+ pasan ahora /);
    expect(findingSays({ kind: 'zone flow changed', controller: null, zones: ['Lawn', 'Beds'], says })).toMatch(
      /^Lawn or Beds passes more /,
    );
  });
});
