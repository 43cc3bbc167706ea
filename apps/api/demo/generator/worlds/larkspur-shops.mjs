// Shops. A zone is [name, 'plants method', area in sq ft, program, more].
const EAST = { station: 'Fennel Hollow East', supplier: 'Fennel Hollow Water' };

const oldMillShops = {
  ...EAST,
  name: 'Old Mill Shops',
  client: 'Old Mill Retail',
  address: '5 Mill Street',
  at: [38.0617, -120.9726],
  elevationFt: 221,
  allowance: { etaf: 0.7 },
  soil: 'loam',
  flowSource: 'measured',
  weekly: true,
  lastRead: '2026-09-22T10:40',
  meters: [{ name: 'Irrigation', unit: 'CCF', psi: 72, first: 10_873.5, since: '2010-06-08' }],
  programs: {
    A: { days: 'Mon Tue Thu Sat', shoulder: 'Mon Thu', starts: '02:30' },
    B: { days: 'Mon Wed Fri', shoulder: 'Mon Fri', starts: '20:30' },
  },
  controllers: [
    {
      name: 'A',
      model: 'able',
      location: 'Loading dock, left of the roll door',
      zones: [
        ['Mill Street lawn', 'cool spray', 3_400, 'A'],
        ['Wheel lawn', 'cool rotor', 7_200, 'A'],
        ['Corner lawn', 'cool spray', 2_600, 'A'],
        ['Car park islands, north', 'shrubs drip', 5_300, 'B', { need: 'moderate' }],
        ['Car park islands, south', 'shrubs drip', 5_600, 'B', { need: 'moderate' }],
        [
          'Race groundcover',
          'groundcover drip',
          6_100,
          'B',
          { species: [['Trachelospermum jasminoides', 90, 'moderate']], need: 'moderate' },
        ],
        ['Shop front pots line', 'annuals drip', 300, 'B'],
        ['Entry beds', 'perennials drip', 1_600, 'B'],
        ['Car park trees', 'trees bubbler', 3_900, 'B'],
      ],
    },
  ],
  // The main broke below the car park on the afternoon of 11 September.
  faults: [{ leak: 'Irrigation', gpm: 4.4, since: '2026-09-11T14:20' }],
  backflow: [['Mill assembly', 'loading dock', 'reduced pressure', '2026-01-15', '2027-01-15']],
};

const ironbarkPlaza = {
  ...EAST,
  name: 'Ironbark Plaza',
  client: 'Ironbark',
  address: '150 Ironbark Avenue',
  at: [38.0571, -120.9858],
  elevationFt: 213,
  allowance: { etaf: 0.45 },
  soil: 'loam',
  flowSource: 'nameplate',
  meters: [{ name: 'Irrigation', unit: 'CCF', sizeIn: 1.5, maxGpm: 100, first: 2_205.8, since: '2021-12-13' }],
  programs: { A: { days: 'Mon Tue Thu Sat', starts: '04:00' }, B: { days: 'Tue Thu Sun', starts: '20:30' } },
  controllers: [
    {
      name: 'A',
      model: 'usual',
      location: 'Behind the bakery, grey cabinet',
      history: { sameAllYear: true, fixedPercent: 100, noPausesSince: '2026-06-01' },
      zones: [
        ['Plaza lawn', 'cool spray', 3_600, 'A'],
        ['Avenue lawn', 'cool spray', 3_100, 'A'],
        ['Terrace shrubs', 'shrubs drip', 4_600, 'B', { need: 'moderate', establishedOn: '2026-03-20' }],
        ['Avenue shrubs', 'shrubs drip', 5_100, 'B'],
        ['Fountain beds', 'perennials drip', 1_100, 'B', { establishedOn: '2026-03-20' }],
        ['Car park groundcover', 'groundcover drip', 3_200, 'B'],
        ['Plaza trees', 'trees bubbler', 1_900, 'B'],
        ['Bakery herbs', 'vegetables drip', 260, 'B', { flowUnknown: true, inPerHr: 0.41 }],
      ],
    },
  ],
  backflow: [['Plaza assembly', 'behind the bakery', 'reduced pressure', '2026-02-27', '2027-02-27']],
};

const thistleFieldShops = {
  name: 'Thistle Field Shops',
  client: 'Thistle Field Shops',
  address: '611 Bench Road',
  at: [38.1215, -120.9198],
  elevationFt: 366,
  station: 'Piedra Bench',
  supplier: 'Piedra Creek Irrigation District',
  allowance: { etaf: 0.45 },
  soil: 'loamy sand',
  flowSource: 'nameplate',
  bills: { from: '2025-08', to: '2026-08', day: 12 },
  meters: [{ name: 'Irrigation', unit: 'HCF', sizeIn: 1, maxGpm: 50, first: 1_866.2, since: '2019-08-26' }],
  programs: { A: { days: 'Mon Wed Fri', starts: '02:00' }, B: { days: 'Mon Wed Sat', starts: '20:00' } },
  controllers: [
    {
      name: 'A',
      model: 'usual',
      location: 'Trash enclosure, outside wall',
      history: { style: 'minutes' },
      zones: [
        ['Field lawn', 'warm nozzle', 5_200, 'A', { duUnknown: true }],
        ['Bench lawn', 'cool spray', 2_400, 'A', { duUnknown: true }],
        ['Shop front beds', 'perennials drip', 1_500, 'B'],
        ['Thistle shrubs', 'shrubs drip', 4_300, 'B', { flowUnknown: true, inPerHr: 0.35 }],
        ['Dry garden', 'groundcover drip', 3_600, 'B', { flowUnknown: true, inPerHr: 0.3 }],
        ['Field trees', 'trees bubbler', 2_100, 'B'],
      ],
    },
  ],
  backflow: [['Field assembly', 'trash enclosure', 'reduced pressure', '2026-06-16', '2027-06-16']],
};

export const shops = [oldMillShops, ironbarkPlaza, thistleFieldShops];
