import { rainPauseLength } from '@rillbook/irrigation/pauses/rain-pause-length.js';
import { expect, it } from 'vitest';

const zone = (zoneId: string, days: number, isKnown = true) => ({ zoneId, days, isKnown });

it('pauses until the first of the zones needs water', () => {
  expect(rainPauseLength([zone('shrubs', 9), zone('turf', 4)], 0)).toEqual({ days: 4, because: 'root zone', firstZoneId: 'turf' });
  expect(rainPauseLength([zone('shrubs', 9), zone('pots', 0)], 0)).toBeNull();
});

it('bounds what is guessed by the 48 hours of common practice, and does not lengthen what is shorter', () => {
  expect(rainPauseLength([zone('shrubs', 9), zone('turf', 4, false)], 0)).toMatchObject({ days: 2, because: 'common practice' });
  expect(rainPauseLength([zone('shrubs', 9, false), zone('turf', 1)], 0)).toMatchObject({ days: 1, because: 'root zone' });
});

it('keeps a rule that forbids longer, and no pause longer than two weeks', () => {
  expect(rainPauseLength([zone('turf', 1)], 3)).toMatchObject({ days: 3, because: 'rule' });
  expect(rainPauseLength([zone('pots', 0)], 2)).toMatchObject({ days: 2, because: 'rule', firstZoneId: 'pots' });
  expect(rainPauseLength([zone('turf', 4)], 3)).toMatchObject({ days: 4, because: 'root zone' });
  expect(rainPauseLength([zone('oaks', 40)], 0)).toMatchObject({ days: 14, because: 'longest' });
});

it('needs a zone', () => {
  expect(() => rainPauseLength([], 2)).toThrowError(expect.objectContaining({ code: 'PAUSE_WITHOUT_ZONES' }));
});
