import type { PlantWord } from '../en/plants.js';

/** The kinds of plants in Spanish. */
export const plants: Readonly<Record<PlantWord, string>> = {
  'plants.turf cool-season': 'césped de clima frío',
  'plants.turf warm-season': 'césped de clima cálido',
  'plants.trees': 'árboles',
  'plants.shrubs': 'arbustos',
  'plants.groundcover': 'cubresuelos',
  'plants.perennials': 'perennes',
  'plants.annuals': 'anuales',
  'plants.vegetables': 'hortalizas',
  'plants.mixed': 'plantas mezcladas',
};
