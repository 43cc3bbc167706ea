export const property = {
  'property.year.table': 'Twelve months of the account',
  'property.year.rain': 'rain hangs',
  'property.year.water': 'water stands',
  'property.year.metered': 'metered, {unit}',
  'property.year.rainFigure': 'rain, {unit}',
  'property.year.toDay': 'to {day}',
};
