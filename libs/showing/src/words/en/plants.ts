/** The kinds of plants, as reports and pages name them. The word of the record stands after the dot. */
export const plants = {
  'plants.turf cool-season': 'cool-season turf',
  'plants.turf warm-season': 'warm-season turf',
  'plants.trees': 'trees',
  'plants.shrubs': 'shrubs',
  'plants.groundcover': 'groundcover',
  'plants.perennials': 'perennials',
  'plants.annuals': 'annuals',
  'plants.vegetables': 'vegetables',
  'plants.mixed': 'mixed planting',
} as const satisfies Record<string, string>;

export type PlantWord = keyof typeof plants;
