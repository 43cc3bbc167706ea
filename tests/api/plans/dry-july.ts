import {
  aController,
  aWaterSupplier,
  aWateringRule,
  aWeatherDay,
  aWeatherStation,
  aZone,
  type Built,
  someSettings,
} from '../../support/builders.js';
import type { TestApp } from '../../support/test-app.js';
import { type FieldDay, fieldDay } from '../fieldwork/field-day.js';

/** The organization's day in these worlds. */
export const TODAY = '2026-07-06';

/** A property whose weather of July 2025 is on record, with a supplier's rule. */
export interface DryJuly {
  readonly day: FieldDay;
  readonly property: Built;
  readonly rule: Built;
  /** one lawn on loam, watered three days a week for 90 min in one go */
  lawn(name: string, precipMmPerH: number, columns?: Record<string, unknown>): Promise<Built>;
}

const DAYS = 120;

export async function dryJuly(product: TestApp): Promise<DryJuly> {
  const { database } = product;
  const day = await fieldDay(product);
  await database.admin('update organization set stands_still_on = $2, least_litres = 1 where id = $1', [day.organizationId, TODAY]);
  const supplier = await aWaterSupplier(database, day.organizationId);
  const rule = await aWateringRule(database, supplier, { name: 'Stage 1', days_per_week: 5 });
  const station = await aWeatherStation(database, day.organizationId);
  for (let back = 0; back < DAYS; back += 1) {
    const date = new Date(Date.UTC(2025, 6, 31 - back)).toISOString().slice(0, 10);
    await aWeatherDay(database, station, { day: date, tmax_c: 30 + (back % 5), tmin_c: 13 + (back % 3) });
  }
  const property = await day.property({ water_supplier_id: supplier.id, weather_station_id: station.id });
  // What a crew has work at, it sees.
  await day.given({ propertyId: property.id }, TODAY);
  const lawn = async (name: string, precipMmPerH: number, columns: Record<string, unknown> = {}): Promise<Built> => {
    const controller = await aController(database, property, {
      name,
      adjust_scope: 'program',
      minute_step: 1,
      cycle_soak: true,
      ...columns,
    });
    await aZone(database, property, { controller_id: controller.id, station: 1, soil: 'loam', precip_mm_per_h: precipMmPerH });
    const stations = [{ station: 1, minutes: 90, cycles: 3, soakMinutes: 30 }];
    const programs = [{ name: 'A', days: 'Mon Wed Fri', starts: ['00:00'], adjustPercent: 100, stations }];
    await someSettings(database, controller, { effective_at: '2026-05-20T12:00:00Z', programs });
    return controller;
  };
  return { day, property, rule, lawn };
}
