import type { property as english } from '../../en/office/property.js';

export const property: Record<keyof typeof english, string> = {
  'property.year.table': 'Doce meses de la cuenta',
  'property.year.rain': 'la lluvia cuelga',
  'property.year.water': 'el agua sube',
  'property.year.metered': 'medido, {unit}',
  'property.year.rainFigure': 'lluvia, {unit}',
  'property.year.toDay': 'al {day}',
};
