import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import { HIGHEST_ETAF, yearlyOrdinanceAllowance } from '@rillbook/metering/volumes/ordinance-allowance.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Tx } from '../../../platform/identity/tx.js';
import { Property } from '../../portfolio/properties/property.type.js';
import { stationSeriesOf } from '../../weather/series/station-series.loader.js';
import { propertyFacts } from '../gather/property-facts.repository.js';
import { zoneInput } from '../gather/zone-input.js';
import { OrdinanceYear } from './ordinance-year.type.js';

/** Days of each month of the year, January first; each fourth February has one more. */
const DAYS_IN_MONTH = [31, 28.25, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** Adds to a property what the ordinance allows in a year of usual weather, to stand beside a month's allowance. */
@Resolver(() => Property)
export class OrdinanceYearResolver {
  /** null where no ordinance limits the property */
  @ResolveField(() => OrdinanceYear, { nullable: true })
  async ordinanceYear(@Tx() tx: OrganizationTransaction, @Parent() property: Property): Promise<OrdinanceYear | null> {
    const { allowanceFrom, allowanceEtaf: etaf } = property;
    if (allowanceFrom !== 'ordinance' || typeof etaf !== 'number' || etaf > HIGHEST_ETAF) return null;
    const { zones } = await propertyFacts.zonesAndMeters(tx, property.id);
    const irrigated = zones.map((zone) => zoneInput(zone, (id) => id, null)).filter((zone) => !zone.handWatered && zone.meterId !== 'none');
    const irrigatedAreaM2 = irrigated.reduce((sum, { areaM2 }) => sum + areaM2, 0) as Quantity<'m2'>;
    if (irrigatedAreaM2 === 0) return shown(null, 'no-zones');
    const normals = property.weatherStationId ? await normalMonths(tx, property.weatherStationId) : null;
    if (!normals) return shown(null, 'normals-missing');
    const specialLandscapeAreaM2 = Math.min(property.specialLandscapeAreaM2 ?? 0, irrigatedAreaM2) as Quantity<'m2'>;
    return shown(yearlyOrdinanceAllowance(normals, { etaf, irrigatedAreaM2, specialLandscapeAreaM2 }), null);
  }
}

const shown = (litres: number | null, reason: OrdinanceYear['reason']): OrdinanceYear =>
  Object.assign(new OrdinanceYear(), { litres, reason });

/** Usual reference evapotranspiration of each month, January first; null where one is not known. [mm] */
async function normalMonths(tx: OrganizationTransaction, stationId: string): Promise<Quantity<'mm'>[] | null> {
  const normals = (await stationSeriesOf.of(tx).load(stationId))?.normals ?? [];
  const months = normals.flatMap(({ month, etoMm }) => (etoMm === null ? [] : [(etoMm * DAYS_IN_MONTH[month - 1]!) as Quantity<'mm'>]));
  return months.length === DAYS_IN_MONTH.length ? months : null;
}
