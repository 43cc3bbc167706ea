import { registerEnumType } from '@nestjs/graphql';

/** The units of screens and reports. */
export enum UnitSystem {
  us = 'us',
  metric = 'metric',
}

/** The languages of screens and reports. */
export enum Language {
  en = 'en',
  es = 'es',
}

/** The five roles of a member. */
export enum RoleName {
  owner = 'owner',
  office = 'office',
  crewLead = 'crewLead',
  technician = 'technician',
  client = 'client',
}

registerEnumType(UnitSystem, { name: 'UnitSystem' });
registerEnumType(Language, { name: 'Language' });
registerEnumType(RoleName, { name: 'Role' });
