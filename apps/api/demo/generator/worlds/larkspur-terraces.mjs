// Townhomes, villas, apartments. A zone is [name, 'plants method', area in sq ft, program, more].
const ASSEMBLY = 'reduced pressure';

const hollowCreekVillas = {
  name: 'Hollow Creek Villas',
  client: 'Hollow Creek Retirement',
  address: '60 Hollow Creek Road',
  at: [38.0588, -120.9644],
  elevationFt: 219,
  station: 'Fennel Hollow East',
  supplier: 'Fennel Hollow Water',
  allowance: { etaf: 0.8 },
  soil: 'sandy loam',
  flowSource: 'nameplate',
  trueFlows: 1.24,
  meters: [{ name: 'Irrigation', unit: 'CCF', sizeIn: 2, maxGpm: 160, psi: 84, first: 9_106.1, since: '2009-05-11' }],
  programs: {
    A: { days: 'Mon Tue Thu Fri Sun', shoulder: 'Mon Thu Sun', starts: '02:00' },
    B: { days: 'Mon Wed Fri', shoulder: 'Mon Fri', starts: '20:30' },
  },
  controllers: [
    {
      name: 'A',
      model: 'able',
      location: 'Pump house',
      zones: [
        ['Bowls lawn', 'cool rotor', 10_400, 'A', { rootIn: 9 }],
        ['Terrace lawn, upper', 'cool rotor', 9_200, 'A'],
        ['Terrace lawn, lower', 'cool rotor', 9_900, 'A'],
        ['Creek lawn', 'cool rotor', 11_600, 'A'],
        ['Gate lawn', 'cool rotor', 8_100, 'A'],
        ['Rose walk', 'perennials drip', 3_400, 'B', { need: 'moderate' }],
        ['Dining court beds', 'annuals drip', 1_200, 'B'],
        ['Creek shrubs', 'shrubs drip', 8_200, 'B'],
        ['Villas hedge', 'shrubs drip', 5_600, 'B', { need: 'moderate' }],
        ['Shade trees', 'trees bubbler', 3_800, 'B'],
      ],
    },
  ],
  backflow: [['Creek assembly', 'pump house', ASSEMBLY, '2026-03-03', '2027-03-03']],
};

const brambleRidge = {
  name: 'Bramble Ridge',
  client: 'Bramble Ridge Apartments',
  address: '8 Bramble Ridge',
  at: [38.0871, -120.9502],
  elevationFt: 318,
  station: 'Fennel Hollow East',
  supplier: 'Fennel Hollow Water',
  allowance: { etaf: 0.7 },
  soil: 'clay',
  flowSource: 'measured',
  audited: true,
  meters: [{ name: 'Irrigation', unit: 'CCF', first: 3_377.4, since: '2012-08-30' }],
  programs: {
    A: { days: 'Mon Tue Thu Sat', shoulder: 'Mon Thu', starts: '04:00' },
    B: { days: 'Mon Wed Fri', shoulder: 'Tue Fri', starts: '21:00' },
  },
  controllers: [
    {
      name: 'A',
      model: 'able',
      location: 'Laundry room, inside wall',
      zones: [
        ['Slope lawn, upper', 'cool spray', 2_700, 'A', { slope: 12 }],
        ['Slope lawn, lower', 'cool spray', 3_000, 'A', { slope: 10 }],
        ['Terrace lawn', 'cool spray', 2_400, 'A', { times: 1.1 }],
        ['Entry lawn', 'cool spray', 2_100, 'A'],
        ['Court lawn', 'cool spray', 2_800, 'A', { times: 1.1, sun: 'part' }],
        ['Ridge shrubs', 'shrubs drip', 6_200, 'B'],
        ['Bank groundcover', 'groundcover drip', 7_400, 'B', { slope: 18, species: [['Baccharis pilularis', 85, 'low']] }],
        ['Car park trees', 'trees bubbler', 2_600, 'B', { species: [['Quercus ilex', 60, 'low', '2019-11-20']] }],
      ],
    },
  ],
  backflow: [['Ridge assembly', 'car park, north corner', ASSEMBLY, '2026-05-06', '2027-05-06']],
};

const tamarackRow = {
  name: 'Tamarack Row',
  client: 'Tamarack Row Townhomes',
  address: '201 Tamarack Row',
  at: [38.0655, -120.9811],
  elevationFt: 228,
  station: 'Fennel Hollow East',
  supplier: 'Fennel Hollow Water',
  allowance: { contract: [2, 8, 30, 60, 100, 130, 150, 140, 110, 65, 20, 4].map((kgal) => kgal * 1000) },
  soil: 'loam',
  flowSource: 'measured',
  notes: 'Dog in the yard of unit 9.',
  meters: [{ name: 'Irrigation', unit: 'kgal', sizeIn: 1.5, first: 4_213.2, since: '2018-06-20' }],
  programs: { A: { days: 'Mon Wed Fri Sat', shoulder: 'Mon Fri', starts: '20:30' }, B: { days: 'Tue Sat', starts: '20:30' } },
  controllers: [
    {
      name: 'A',
      model: 'able',
      location: 'Garage wall, east end',
      history: {},
      zones: [
        ['Front lawn, north', 'cool spray', 2_900, 'A', { sun: 'part' }],
        ['Front lawn, south', 'cool spray', 3_100, 'A'],
        ['Mews lawn', 'cool spray', 2_600, 'A'],
        ['Green', 'cool nozzle', 5_200, 'A'],
        ...['north', 'south', 'east', 'west'].map((side) => [
          `Hedge, ${side}`,
          'shrubs drip',
          4_100,
          'A',
          { need: 'moderate', times: 2, mulch: 2, inPerHr: 0.62 },
        ]),
        ...[1, 2, 3, 4, 5].map((unit) => [
          `Beds, units ${unit * 4 - 3} to ${unit * 4}`,
          'shrubs drip',
          4_300,
          'A',
          { need: 'moderate', times: 2, inPerHr: 0.6 },
        ]),
      ],
    },
  ],
  backflow: [['Tamarack assembly', 'north entry', ASSEMBLY, '2025-10-09', '2026-10-09']],
};

export const terraces = [hollowCreekVillas, brambleRidge, tamarackRow];
