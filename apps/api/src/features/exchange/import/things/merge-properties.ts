import { mergeKept, type Wish } from '../kept/merge-kept.js';
import { saysOf } from '../kept/says-of.js';
import type { FileMerge } from '../directory/file-merge.js';
import { supplierIds } from '../suppliers/supplier-ids.js';
import { clientIds } from './client-ids.js';

const OTHERWISE = { name: 'property', clientId: 'client', weatherStationId: 'weather_station', waterSupplierId: 'water_supplier' } as const;

/** properties.csv: clients and water suppliers are made by being named; a station must have its position in stations.csv first. */
export const mergeProperties: FileMerge<'properties'> = async (to, { columns, rows }) => {
  const { directory } = to;
  const clients = await clientIds(
    to,
    rows.map(({ values }) => values.client),
  );
  const suppliers = await supplierIds(
    to,
    rows.flatMap(({ values }) => values.waterSupplier ?? []),
  );
  const wishes = rows.map(({ values, typed }): Wish => {
    const { property, client, timeZone, weatherStation, waterSupplier, allowanceLitresPerMonth, ...others } = values;
    return {
      id: directory.properties.of(property),
      typed,
      values: {
        ...others,
        name: property,
        clientId: clients.get(client)!,
        timeZone: timeZone ?? directory.timeZone,
        weatherStationId: weatherStation === null ? null : directory.stations.find(weatherStation),
        waterSupplierId: waterSupplier === null ? null : suppliers.get(waterSupplier)!,
        allowanceLitresPerMonth: allowanceLitresPerMonth && [...allowanceLitresPerMonth],
      },
    };
  });
  const merged = await mergeKept(to.tx, 'property', wishes, saysOf('properties', columns, OTHERWISE));
  for (const id of merged.ids) to.touched.properties.add(id);
  return merged;
};
