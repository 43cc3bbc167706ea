import { afterAll, beforeAll, expect, it } from 'vitest';
import {
  aBackflowAssembly,
  aController,
  aMeter,
  aPlanting,
  aProperty,
  aRateTier,
  aWaterSupplier,
  aWateringRule,
  aWeatherDay,
  aWeatherStation,
  aZone,
} from '../../support/builders.js';
import { countStatements } from '../../support/count-statements.js';
import { startApp, type TestApp } from '../../support/test-app.js';

let product: TestApp;

beforeAll(async () => {
  product = await startApp();
});
afterAll(() => product.close());

/** An organization with so many properties, each with all that may stand on one. */
async function companyOf(properties: number) {
  const { database } = product;
  const organizationId = await product.organization();
  for (let count = 0; count < properties; count += 1) {
    const [station, supplier] = [await aWeatherStation(database, organizationId), await aWaterSupplier(database, organizationId)];
    await aWeatherDay(database, station, { day: '2026-07-01' });
    await aRateTier(database, supplier);
    await aWateringRule(database, supplier);
    const place = await aProperty(database, organizationId, { weather_station_id: station.id, water_supplier_id: supplier.id });
    const [meter, controller] = [await aMeter(database, place), await aController(database, place)];
    await aPlanting(database, await aZone(database, place, { meter_id: meter.id, controller_id: controller.id, station: 1 }));
    await aBackflowAssembly(database, place);
  }
  return product.somebody(organizationId, 'office');
}

const LISTS = {
  properties:
    '{ properties { client { properties { name } } meters { name } controllers { name } zones { name plantings { species } } backflowAssemblies { name } weatherStation { lastDay } waterSupplier { rules { name } rateTiers { price } } changes { by } } }',
  clients: '{ clients { properties { meters { name } } } }',
  waterSuppliers: '{ waterSuppliers { rules { name } rateTiers { price } } }',
  weatherStations: '{ weatherStations { name lastDay } }',
};

it.each(Object.entries(LISTS))('asks as many statements for 20 %s as for one', async (list, query) => {
  const statementsFor = async (parents: number): Promise<number> => {
    const office = await companyOf(parents);
    return countStatements(product.source, async () => {
      const answer = await office.send(query);
      expect(answer.errors).toEqual([]);
      expect(answer.data[list]).toHaveLength(parents);
    });
  };
  const forOne = await statementsFor(1);
  expect(forOne).toBeGreaterThan(2);
  expect(await statementsFor(20)).toBe(forOne);
});
