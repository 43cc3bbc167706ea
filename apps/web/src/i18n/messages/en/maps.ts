export const maps = {
  'maps.name': 'Where the properties lie: {count, plural, one {one place} other {# places}}',
  'maps.unexplained': 'above need, mostly unexplained',
  'maps.settings': 'above need, mostly settings',
  'maps.under': 'getting too little',
  'maps.near': 'near its need',
  'maps.unknown': 'cannot be counted yet',
  'maps.key': 'The number is the place in the list; a larger mark is more water.',
  'maps.north': 'N',
  'maps.noPlaces': 'No property here has a position yet.',
  'maps.withoutPosition':
    '{count, plural, one {One property has no position and is not on the map.} other {# properties have no position and are not on the map.}}',
};
