// What every landscaper knows and no paper is needed for: common practice, no source. Each is computed with the product's own defaults, in the
// normal months of one region (California DWR and UC Davis 1999, zone 14) unless all regions are asked.
import { dailyNormal, yearlyNormal } from '@rillbook/agronomy/budgets/normal-year.js';
import { etoOfZone, etoZones } from '@rillbook/agronomy/budgets/eto-zones.js';
import { establishment } from '@rillbook/agronomy/plants/establishment/establishment.js';
import { youngRootDepth } from '@rillbook/agronomy/plants/establishment/young-plants.js';
import { landscapeEvapotranspiration, totalWaterApplied } from '@rillbook/agronomy/plants/landscape-coefficient.js';
import { managementAllowedDepletion } from '@rillbook/agronomy/plants/management-allowed-depletion.js';
import { plantFactor } from '@rillbook/agronomy/plants/plant-factor.js';
import type { Plants } from '@rillbook/agronomy/plants/plant-words.js';
import { rootDepth } from '@rillbook/agronomy/plants/root-depth.js';
import { availableWater } from '@rillbook/agronomy/soil/available-water.js';
import { layerVolume } from '@rillbook/agronomy/soil/cover/layer-volume.js';
import { irrigationNeed } from '@rillbook/agronomy/water-balance/irrigation-need.js';
import { readilyAvailableWater } from '@rillbook/agronomy/water-balance/root-zone/readily-available-water.js';
import { totalAvailableWaterOfSoil } from '@rillbook/agronomy/water-balance/root-zone/total-available-water.js';
import { wateringInterval } from '@rillbook/irrigation/hardware/run-time/watering-interval.js';
import { defaultUniformity } from '@rillbook/irrigation/hardware/uniformity/default-uniformity.js';
import { ordinanceEfficiency } from '@rillbook/metering/volumes/allowances/ordinance-worksheet.js';
import { grossVolume } from '@rillbook/metering/volumes/gross-volume.js';
import { squareMetresFromSquareFeet } from '@rillbook/units/area.js';
import { millimetres, millimetresFromInches } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { describe, expect, it } from 'vitest';

const JANUARY = 1;
const JULY = 7;
const normal = etoOfZone(14).months;
const CUBIC_YARD = 27 * 0.3048 ** 3;

const storage = (plants: Plants, depth: Quantity<'mm'> = rootDepth(null, plants).rootDepth): Quantity<'mm'> =>
  readilyAvailableWater(managementAllowedDepletion(plants), totalAvailableWaterOfSoil(availableWater('loam'), depth));
const dailyUse = (plants: Plants, month: number): Quantity<'mm'> =>
  landscapeEvapotranspiration(plantFactor(null, null, plants).plantFactor, dailyNormal(normal, month));
const interval = (plants: Plants, month = JULY): number => wateringInterval(storage(plants), dailyUse(plants, month))!;

describe('common practice, no source', () => {
  // That beds get it every year is advice; nothing here computes what compost does, only how much of it there is.
  it('volume of an inch of compost: 1,000 ft2 of beds take about 3 yd3', () => {
    expect(layerVolume(squareMetresFromSquareFeet(1000), millimetresFromInches(1)) / CUBIC_YARD).toBeCloseTo(3.1, 1);
  });

  it('lawn, shrubs and annual colour are watered on schedules of their own: every 6th, 12th and 2nd day of July', () => {
    expect((['turf warm-season', 'shrubs', 'annuals'] as const).map((plants) => interval(plants))).toEqual([6, 12, 2]);
    // Shrubs on the lawn's schedule get water twice as often as they need it, in colour beds on it plants wilt.
    expect(dailyUse('annuals', JULY)).toBeGreaterThan(dailyUse('turf warm-season', JULY));
    expect(dailyUse('turf warm-season', JULY)).toBeGreaterThan(dailyUse('shrubs', JULY));
  });

  it('what was just planted is watered every few days, once it is grown every second week', () => {
    const roots = (date: string) =>
      youngRootDepth('shrubs', rootDepth(null, 'shrubs').rootDepth, establishment('shrubs', '2026-07-01', date)!.share);
    const every = (date: string) => wateringInterval(storage('shrubs', roots(date)), dailyUse('shrubs', JULY))!;
    expect(every('2026-07-01')).toBeLessThan(every('2027-07-01'));
    expect(every('2027-07-01')).toBe(interval('shrubs'));
  });

  it('settings change with the season: July needs three times January or more, in every region', () => {
    for (const zone of etoZones) {
      const { months } = etoOfZone(zone);
      expect(months[JULY - 1]! / months[JANUARY - 1]!, `zone ${zone}`).toBeGreaterThanOrEqual(3);
    }
    expect(interval('turf cool-season', JANUARY)).toBeGreaterThan(4 * interval('turf cool-season', JULY));
  });

  it("a timer that keeps July's minutes all year puts out over 40 % more than the year needs, in every region", () => {
    for (const zone of etoZones) {
      const { months } = etoOfZone(zone);
      expect((12 * months[JULY - 1]!) / yearlyNormal(months), `zone ${zone}`).toBeGreaterThan(1.4);
    }
  });

  it('after 12 mm of rain in July a lawn needs no water for 24 to 48 hours', () => {
    const days = 30;
    const rainyDay = 10;
    const eto = Array.from({ length: days }, () => dailyNormal(normal, JULY));
    const rain = eto.map((_, day) => (day === rainyDay ? 12 : 0));
    const rootZone = {
      plantCoefficient: plantFactor(null, null, 'turf cool-season').plantFactor,
      readilyAvailableWater: storage('turf cool-season'),
    };
    const { irrigationMm } = irrigationNeed({ eto, rain }, rootZone, 0);
    const dry = irrigationNeed({ eto, rain: rain.map(() => 0) }, rootZone, 0).irrigationMm;
    const without = [...irrigationMm].flatMap((depth, day) => (depth === 0 ? [day] : []));
    expect(without).toEqual([rainyDay, rainyDay + 1]);
    expect([...dry].every((depth) => depth > 0)).toBe(true);
    // All that fell is saved, no more: the days after need what they always did.
    const sum = (depths: Float64Array) => depths.reduce((total, depth) => total + depth, 0);
    expect(sum(dry) - sum(irrigationMm)).toBeCloseTo(12, 9);
  });

  it('spray loses more to mist and evaporation than drip, and spreads less evenly than drip under the ground', () => {
    const need = millimetres(100);
    const [spray, drip] = (['overhead', 'drip'] as const).map((watering) => totalWaterApplied(need, ordinanceEfficiency(watering)));
    // 1 - 0.75 / 0.81.
    expect(1 - drip! / spray!).toBeCloseTo(0.074, 3);
    const gross = (method: 'spray' | 'drip' | 'subsurface drip') =>
      grossVolume(need, { areaM2: 100, duLq: defaultUniformity(method).value, leachingFraction: 0 });
    expect(gross('spray')).toBeGreaterThan(gross('drip'));
    expect(gross('drip')).toBeGreaterThan(gross('subsurface drip'));
  });
});
