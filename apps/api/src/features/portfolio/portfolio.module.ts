import { Module } from '@nestjs/common';
import { BackflowAssemblyResolver } from './backflow/backflow-assembly.resolver.js';
import { PropertyBackflowAssembliesResolver } from './backflow/property-backflow-assemblies.field-resolver.js';
import { ChangesResolver } from './changes/changes.resolver.js';
import { ClientPropertiesResolver } from './clients/client-properties.field-resolver.js';
import { ClientResolver } from './clients/client.resolver.js';
import { MemberClientFieldResolver } from './clients/member-client.field-resolver.js';
import { PropertyClientResolver } from './clients/property-client.field-resolver.js';
import { ControllerResolver } from './controllers/controller.resolver.js';
import { PropertyControllersResolver } from './controllers/property-controllers.field-resolver.js';
import { MeterResolver } from './meters/meter.resolver.js';
import { PropertyMetersResolver } from './meters/property-meters.field-resolver.js';
import { PlantingResolver } from './plantings/planting.resolver.js';
import { ZonePlantingsResolver } from './plantings/zone-plantings.field-resolver.js';
import { PropertyResolver } from './properties/property.resolver.js';
import { PropertyWaterSupplierResolver } from './suppliers/property-water-supplier.field-resolver.js';
import { RateTierResolver } from './suppliers/rates/rate-tier.resolver.js';
import { BringInRule } from './suppliers/rules/bring-in-rule.service.js';
import { WateringRuleResolver } from './suppliers/rules/watering-rule.resolver.js';
import { WaterSupplierResolver } from './suppliers/water-supplier.resolver.js';
import { MeasureZone } from './zones/measure-zone.service.js';
import { PropertyZonesResolver } from './zones/property-zones.field-resolver.js';
import { ZoneResolver } from './zones/zone.resolver.js';

const things = [
  ClientResolver,
  PropertyResolver,
  MeterResolver,
  ControllerResolver,
  ZoneResolver,
  PlantingResolver,
  BackflowAssemblyResolver,
  WaterSupplierResolver,
  WateringRuleResolver,
  RateTierResolver,
  ChangesResolver,
];
const fields = [
  ClientPropertiesResolver,
  MemberClientFieldResolver,
  PropertyClientResolver,
  PropertyMetersResolver,
  PropertyControllersResolver,
  PropertyZonesResolver,
  PropertyBackflowAssembliesResolver,
  PropertyWaterSupplierResolver,
  ZonePlantingsResolver,
];

/** Clients, properties and what stands on them; who sells the water, its rules and rates; what was changed. */
@Module({ providers: [...things, ...fields, BringInRule, MeasureZone], exports: [BringInRule, MeasureZone] })
export class PortfolioModule {}
