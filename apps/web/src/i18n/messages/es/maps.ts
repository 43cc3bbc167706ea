import type { maps as english } from '../en/maps.js';

export const maps: Record<keyof typeof english, string> = {
  'maps.name': 'Dónde están las propiedades: {count, plural, one {un lugar} other {# lugares}}',
  'maps.unexplained': 'sobre lo necesario, la mayor parte sin explicar',
  'maps.settings': 'sobre lo necesario, la mayor parte por ajustes',
  'maps.under': 'recibe muy poco',
  'maps.near': 'cerca de lo necesario',
  'maps.unknown': 'todavía no se puede contar',
  'maps.key': 'El número es el lugar en la lista; una marca más grande es más agua.',
  'maps.north': 'N',
  'maps.noPlaces': 'Ninguna propiedad de aquí tiene posición todavía.',
  'maps.withoutPosition':
    '{count, plural, one {Una propiedad no tiene posición y no está en el mapa.} other {# propiedades no tienen posición y no están en el mapa.}}',
};
