import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { organizations } from '../../../platform/identity/organizations/organization.repository.js';
import { nowOf, todayOf } from '../../../platform/jobs/clock.js';
import { rootZonesToday, type WeatherToday, weatherToday } from '../../accounts/needs/root-zones-today.service.js';
import { controllersOfProperty } from '../../portfolio/controllers/controllers-of-property.loader.js';
import { metersOfProperty } from '../../portfolio/meters/meters-of-property.loader.js';
import { propertyOfId } from '../../portfolio/properties/property.loader.js';
import { inScope } from '../../portfolio/properties/property-scope.service.js';
import { wateringRulesOfSupplier } from '../../portfolio/suppliers/rules/watering-rules.loader.js';
import { ruleOfRow } from '../gather/rule-of-row.js';
import { controllerToPause, type PropertyRow, type RainedOn } from './controller-to-pause.js';
import { type ControllerToPause, RainPauseList } from './rain-pause-list.type.js';

/** Says which controllers can be paused after the rain of the last few days, and until when. */
@Injectable()
export class RainPauses {
  async run(tx: OrganizationTransaction): Promise<RainPauseList> {
    const own = await organizations.own(tx);
    const [now, today] = [nowOf(own), todayOf(own)];
    const rows = await propertyOfId.of(tx).loadMany([...(await inScope(tx))]);
    const properties = rows.filter((row): row is PropertyRow => row !== null && !(row instanceof Error));
    const { rainedOn, withoutWeather } = await whereItRained(tx, properties, today);
    const zones = await rootZonesToday(tx, new Map([...rainedOn].map(([{ id }, weather]) => [id, weather])), today);
    const places = [...rainedOn].map(([property, weather]) => ({ property, weather, zones: zones.get(property.id) ?? [], now, today }));
    const found = await Promise.all(places.map((place) => controllersToPause(tx, place)));
    const byNeed = (one: ControllerToPause, other: ControllerToPause): number =>
      Number(one.pausesItself !== null) - Number(other.pausesItself !== null) || (other.keptLitres ?? 0) - (one.keptLitres ?? 0);
    return Object.assign(new RainPauseList(), { today, controllers: found.flat().sort(byNeed), withoutWeather });
  }
}

async function whereItRained(tx: OrganizationTransaction, properties: readonly PropertyRow[], today: string) {
  const stations = [...new Set(properties.flatMap(({ weatherStationId }) => weatherStationId ?? []))];
  const weather = new Map<string, WeatherToday | null>();
  for (const id of stations) weather.set(id, await weatherToday(tx, id, today));
  const rainedOn = new Map<PropertyRow, WeatherToday>();
  let withoutWeather = 0;
  for (const property of properties) {
    const own = property.weatherStationId === null ? null : (weather.get(property.weatherStationId) ?? null);
    if (!own) withoutWeather += 1;
    else if (own.rain.length) rainedOn.set(property, own);
  }
  return { rainedOn, withoutWeather };
}

// All at once, so that the loaders ask for the properties together.
async function controllersToPause(tx: OrganizationTransaction, place: RainedOn): Promise<ControllerToPause[]> {
  const { id, waterSupplierId } = place.property;
  const controllers = await controllersOfProperty.of(tx).load(id);
  const rows = waterSupplierId === null ? [] : await wateringRulesOfSupplier.of(tx).load(waterSupplierId);
  const meters = await metersOfProperty.of(tx).load(id);
  const rules = { rules: rows.map(ruleOfRow), meters };
  const lines = await Promise.all(controllers.map((controller) => controllerToPause(tx, place, controller, rules)));
  return lines.filter((line) => line !== null);
}
