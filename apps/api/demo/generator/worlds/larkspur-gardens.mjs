// Houses and small gardens. A zone is [name, 'plants method', area in sq ft, program, more].
const EAST = { station: 'Fennel Hollow East', supplier: 'Fennel Hollow Water' };
const BENCH = { station: 'Piedra Bench', supplier: 'Piedra Creek Irrigation District' };

const dovecoteGardens = {
  ...EAST,
  name: 'Dovecote Gardens',
  client: 'Dovecote Gardens Society',
  address: '6 Dovecote Lane',
  at: [38.0751, -120.9467],
  elevationFt: 283,
  allowance: { etaf: 0.7 },
  soil: 'loam',
  flowSource: 'measured',
  meters: [
    {
      name: 'Irrigation',
      unit: 'gal',
      multiplier: 100,
      resolution: 0.1,
      digits: 6,
      sizeIn: 1,
      maxGpm: 50,
      first: 20_918.4,
      since: '2009-03-18',
    },
  ],
  programs: { A: { days: 'Mon Tue Thu Sat', shoulder: 'Mon Thu', starts: '03:00' }, B: { days: 'Mon Wed Fri', starts: '20:30' } },
  controllers: [
    {
      name: 'A',
      model: 'plain',
      location: 'Tool shed',
      history: { style: 'minutes' },
      zones: [
        ['Allotments, north', 'vegetables drip', 2_400, 'A', { rootIn: 14 }],
        ['Allotments, south', 'vegetables drip', 2_600, 'A', { rootIn: 14 }],
        ['Meeting lawn', 'cool spray', 1_900, 'A'],
        ['Berry rows', 'shrubs drip', 1_800, 'B', { need: 'moderate' }],
        ['Espaliers', 'trees drip', 1_100, 'B', { need: 'moderate', species: [['Malus domestica', 90, 'moderate', '2021-02-14']] }],
      ],
    },
  ],
  byHand: [['Dovecote barrels', 'annuals hand', 90, null, { handGallons: 85, meter: 'none' }]],
};

const sorrelBank = {
  ...BENCH,
  name: 'Sorrel Bank',
  client: 'Sorrel Bank Household',
  address: '31 Sorrel Bank',
  at: [38.1126, -120.9401],
  elevationFt: 331,
  allowance: { etaf: 0.55 },
  soil: 'silty clay',
  flowSource: 'nameplate',
  meters: [{ name: 'Garden', unit: 'ft3', resolution: 1, digits: 7, sizeIn: 0.75, maxGpm: 30, first: 38_409, since: '2018-10-22' }],
  programs: { A: { days: 'Mon Wed Fri', starts: '05:00' }, B: { days: 'Mon Thu', starts: '06:00' } },
  controllers: [
    {
      name: 'A',
      model: 'usual',
      location: 'Side porch',
      // The timer follows a weather feed of its own since the spring.
      history: { style: 'minutes', weatherFrom: '2026-04-25T00:00' },
      zones: [
        ['Bank lawn', 'warm nozzle', 2_800, 'A'],
        ['Sorrel terrace', 'perennials drip', 1_200, 'B'],
        ['Bank shrubs', 'shrubs drip', 1_900, 'B', { slope: 16 }],
        ['Fig and quince', 'trees drip', 700, 'B', { need: 'moderate' }],
      ],
    },
  ],
};

const larkriseCourt = {
  ...EAST,
  name: 'Larkrise Court',
  client: 'Larkrise Court Owners',
  address: '88 Larkrise Court',
  at: [38.0557, -120.9594],
  elevationFt: 215,
  allowance: { etaf: 0.55 },
  soil: 'loam',
  flowSource: 'measured',
  meters: [{ name: 'Irrigation', unit: 'CCF', sizeIn: 1, maxGpm: 50, first: 1_377.8, since: '2020-01-30' }],
  programs: { A: { days: 'Mon Tue Thu Sat', shoulder: 'Mon Thu', starts: '04:00' }, B: { days: 'Mon Wed Fri', starts: '20:30' } },
  controllers: [
    {
      name: 'A',
      model: 'able',
      location: 'Meter cupboard, stair 2',
      zones: [
        ['Court lawn', 'warm rotor', 5_900, 'A'],
        ['Stair beds', 'perennials drip', 1_100, 'B'],
        ['Court shrubs', 'shrubs drip', 3_600, 'B'],
        ['South border', 'mixed drip', 1_700, 'B', { factor: 0.4 }],
        ['Court maples', 'trees bubbler', 1_400, 'B', { species: [['Acer palmatum', 70, 'moderate']] }],
      ],
    },
  ],
  // It ran day and night from before the first reading until it was found and mended.
  faults: [{ leak: 'Irrigation', since: '2025-06-28T00:00', until: '2026-05-12T11:30', gpm: 0.16 }],
  backflow: [['Court assembly', 'stair 2', 'reduced pressure', '2026-06-25', '2027-06-25']],
};

const goldfinchHouse = {
  ...BENCH,
  name: 'Goldfinch House',
  client: 'Familia Arroyo Luján',
  address: '27 Goldfinch Lane',
  at: [38.1108, -120.9359],
  elevationFt: 338,
  allowance: { etaf: 0.55 },
  soil: 'loam',
  flowSource: 'nameplate',
  bills: { from: '2025-07', to: '2026-08', day: 17 },
  notes: 'La familia habla español. El perro es manso.',
  meters: [
    {
      name: 'House',
      kind: 'mixed',
      unit: 'CCF',
      sizeIn: 0.75,
      maxGpm: 30,
      first: 902.4,
      since: '2003-06-11',
      indoor: { gallons: 195, stated: true },
    },
  ],
  programs: { A: { days: 'Mon Wed Fri', starts: '05:00' }, B: { days: 'Mon Thu', starts: '06:30' } },
  controllers: [
    {
      name: 'A',
      model: 'plain',
      location: 'Garage',
      // Too long from the beginning, until the technician set the minutes with the family.
      history: { style: 'minutes', changes: [{ until: '2026-05-06T14:40', times: 1.45 }] },
      zones: [
        ['Césped delantero', 'cool spray', 1_400, 'A'],
        ['Césped trasero', 'warm spray', 1_900, 'A'],
        ['Rosales', 'perennials drip', 420, 'B'],
        ['Limoneros', 'trees drip', 520, 'B', { need: 'moderate', species: [['Citrus limon', 90, 'moderate']] }],
      ],
    },
  ],
};

const kestrelHouse = {
  ...BENCH,
  name: 'Kestrel House',
  client: 'Kestrel House Trust',
  address: '44 Bench Road',
  at: [38.1182, -120.9224],
  elevationFt: 359,
  allowance: { etaf: 0.55 },
  soil: 'sandy loam',
  flowSource: 'measured',
  meters: [
    {
      name: 'House',
      kind: 'mixed',
      unit: 'm3',
      resolution: 0.01,
      digits: 6,
      sizeIn: 1,
      maxGpm: 50,
      first: 1_244.31,
      since: '2022-03-29',
      indoor: { gallons: 260 },
    },
  ],
  programs: { A: { days: 'Tue Thu Sat', starts: '04:00' }, B: { days: 'Tue Thu Sat', starts: '21:00' } },
  controllers: [
    {
      name: 'A',
      model: 'usual',
      location: 'Cellar door',
      monthly: [0, 0, 30, 55, 78, 95, 101, 89, 62, 40, 12, 0],
      history: { monthly: true },
      zones: [
        ['South lawn', 'cool nozzle', 3_900, 'A'],
        ['Kestrel meadow', 'groundcover micro', 3_200, 'A', { need: 'moderate' }],
        ['Walled garden', 'perennials sub', 1_300, 'B'],
        ['Nut walk', 'trees drip', 2_000, 'B', { need: 'moderate' }],
      ],
    },
  ],
  byHand: [['Frames', 'vegetables hand', 160, null, { handGallons: 60 }]],
};

export const gardens = [dovecoteGardens, sorrelBank, larkriseCourt, goldfinchHouse, kestrelHouse];
