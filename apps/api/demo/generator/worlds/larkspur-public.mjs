// Parks, the library, the chapel. A zone is [name, 'plants method', area in sq ft, program, more].
const EAST = { station: 'Fennel Hollow East', supplier: 'Fennel Hollow Water' };

const piedraLanePark = {
  ...EAST,
  name: 'Piedra Lane Park',
  client: 'Town of Fennel Hollow',
  address: '1 Piedra Lane',
  at: [38.0812, -120.9571],
  elevationFt: 262,
  allowance: { etaf: 0.8 },
  soil: 'loam',
  flowSource: 'measured',
  audited: true,
  notes: 'Recycled water: not for drinking, the purple signs stay.',
  meters: [
    {
      name: 'Recycled',
      water: 'recycled',
      unit: 'kgal',
      sizeIn: 3,
      maxGpm: 300,
      psi: 78,
      first: 31_640.8,
      pricePerUnit: '3.10',
      since: '2016-05-16',
    },
  ],
  programs: { A: { days: 'Mon Tue Thu Fri Sat', shoulder: 'Mon Wed Fri', starts: '22:00' }, B: { days: 'Wed Sun', starts: '22:00' } },
  controllers: [
    {
      name: 'A',
      model: 'large',
      location: 'Restroom building, service door',
      zones: [
        ['East field, near', 'cool rotor', 12_400, 'A', { leaching: 0.1, times: 1.42 }],
        ['East field, far', 'cool rotor', 12_800, 'A', { leaching: 0.1, times: 1.36 }],
        ['West field, near', 'cool rotor', 11_900, 'A', { leaching: 0.1 }],
        ['West field, far', 'cool rotor', 12_100, 'A', { leaching: 0.1 }],
        ['Picnic lawn', 'cool nozzle', 6_400, 'A', { leaching: 0.1, sun: 'part' }],
        ['Playground lawn', 'cool spray', 3_500, 'A', { leaching: 0.1 }],
        ['Lane shrubs', 'shrubs drip', 5_700, 'B', { leaching: 0.1 }],
        ['Restroom beds', 'perennials drip', 1_300, 'B', { leaching: 0.1 }],
        ['Native bank', 'groundcover drip', 9_000, 'B', { need: 'very low', leaching: 0.1, species: [['Muhlenbergia rigens', 50, 'low']] }],
        [
          'Park trees',
          'trees bubbler',
          5_200,
          'B',
          {
            leaching: 0.1,
            species: [
              ['Quercus agrifolia', 70, 'very low'],
              ['Platanus racemosa', 30, 'moderate'],
            ],
          },
        ],
      ],
    },
  ],
  backflow: [['Lane assembly', 'restroom building', 'reduced pressure', '2026-02-18', '2027-02-18']],
};

const sycamoreStreetLibrary = {
  ...EAST,
  name: 'Sycamore Street Library',
  client: 'Town of Fennel Hollow',
  address: '25 Sycamore Street',
  at: [38.0667, -120.9702],
  elevationFt: 230,
  allowance: { etaf: 0.8 },
  soil: 'loam',
  flowSource: 'measured',
  audited: true,
  meters: [{ name: 'Irrigation', unit: 'CCF', sizeIn: 1.5, first: 2_940.2, since: '2008-10-06', feed: true }],
  programs: { A: { days: 'Mon Tue Thu Sat', shoulder: 'Mon Thu', starts: '03:00' }, B: { days: 'Wed Fri', starts: '04:00' } },
  controllers: [
    {
      name: 'A',
      model: 'able',
      location: 'Book return, inside',
      zones: [
        ['Reading lawn', 'cool rotor', 8_600, 'A'],
        ['Steps lawn', 'cool spray', 2_700, 'A'],
        ['Corner lawn', 'cool spray', 2_300, 'A'],
        ['Book return beds', 'perennials drip', 1_800, 'B'],
        ['Street shrubs', 'shrubs drip', 3_900, 'B'],
        [
          'Street trees',
          'trees bubbler',
          2_400,
          'B',
          {
            species: [
              ['Acer palmatum', 40, 'moderate'],
              ['Magnolia grandiflora', 60, 'moderate'],
            ],
          },
        ],
      ],
    },
  ],
  // Somebody opens a valve by hand before the Sunday market.
  faults: [{ stray: 'Irrigation', at: ['2026-09-06T12:05', '2026-09-13T11:50', '2026-09-20T12:10'], minutes: 158, gpm: 44 }],
  backflow: [['Street assembly', 'planter by the steps', 'reduced pressure', '2026-04-21', '2027-04-21']],
};

const depotGreen = {
  ...EAST,
  name: 'Depot Green',
  client: 'Town of Fennel Hollow',
  address: '2 Depot Street',
  at: [38.0629, -120.9763],
  elevationFt: 224,
  allowance: { etaf: 0.8 },
  soil: 'sandy loam',
  flowSource: 'measured',
  weekly: true,
  meters: [{ name: 'Irrigation', unit: 'CCF', first: 7_780.6, since: '2006-04-27' }],
  programs: { A: { days: 'Mon Tue Thu Sat', shoulder: 'Mon Thu', starts: '01:30' }, B: { days: 'Mon Thu', starts: '20:30' } },
  controllers: [
    {
      name: 'A',
      model: 'able',
      location: 'Old ticket window',
      zones: [
        ['Green, east', 'warm rotor', 9_000, 'A'],
        ['Green, west', 'cool rotor', 11_800, 'A'],
        ['Bandstand lawn', 'cool spray', 2_900, 'A'],
        ['Depot beds', 'annuals drip', 800, 'B', { species: [['Petunia hybrid', 100, 'moderate', '2026-05-02']] }],
        ['Track shrubs', 'shrubs drip', 5_100, 'B'],
        ['Plane trees', 'trees bubbler', 2_900, 'B'],
      ],
    },
  ],
  faults: [{ zone: 'Green, west', factor: 0, since: '2026-08-08T00:00' }],
  backflow: [['Depot assembly', 'old ticket window', 'pressure vacuum breaker', '2026-03-24', '2027-03-24']],
};

const brackenWayStrip = {
  ...EAST,
  name: 'Bracken Way Strip',
  client: 'Town of Fennel Hollow',
  address: '118 Bracken Way',
  at: [38.0764, -120.9826],
  elevationFt: 246,
  allowance: { etaf: 0.45 },
  soil: 'loamy sand',
  flowSource: 'measured',
  meters: [{ name: 'Irrigation', unit: 'ft3', resolution: 1, digits: 7, sizeIn: 1, maxGpm: 50, first: 48_212, since: '2020-09-14' }],
  programs: { A: { days: 'Mon Wed Fri', shoulder: 'Mon Fri', starts: '04:30' } },
  controllers: [
    {
      name: 'A',
      model: 'usual',
      location: 'Post at the crossing',
      history: { style: 'minutes' },
      zones: [
        ['Strip shrubs, north', 'shrubs drip', 3_400, 'A'],
        ['Strip shrubs, south', 'shrubs drip', 3_700, 'A'],
        ['Strip grasses', 'perennials drip', 2_900, 'A', { need: 'low', species: [['Muhlenbergia rigens', 80, 'low', '2020-11-02']] }],
        ['Strip trees', 'trees bubbler', 1_900, 'A', { soil: 'sand' }],
      ],
    },
  ],
  // Two bubblers of the trees stood broken until the crew replaced them.
  faults: [{ zone: 'Strip trees', since: '2025-06-28T00:00', until: '2026-05-19T13:20', factor: 1.8 }],
  backflow: [['Strip assembly', 'post at the crossing', 'double check', '2025-12-01', '2026-12-01']],
};

const fennelHollowChapel = {
  ...EAST,
  name: 'Chapel on the Hollow',
  client: 'Fennel Hollow Chapel',
  address: '40 Chapel Rise',
  at: [38.0705, -120.9615],
  elevationFt: 252,
  allowance: { etaf: 0.8 },
  soil: 'silty clay',
  flowSource: 'nameplate',
  readingNotes: { '2026-08-30': 'The dial has gone past 99999.' },
  meters: [{ name: 'Irrigation', unit: 'ft3', resolution: 1, digits: 5, sizeIn: 1.5, maxGpm: 100, first: 47_150, since: '1998-02-11' }],
  programs: { A: { days: 'Mon Tue Thu Sat', shoulder: 'Mon Thu', starts: '04:00' }, B: { days: 'Mon Wed Fri', starts: '05:30' } },
  controllers: [
    {
      name: 'A',
      model: 'plain',
      location: 'Vestry passage',
      history: { style: 'minutes' },
      zones: [
        ['Porch lawn', 'cool spray', 2_600, 'A'],
        ['Hall lawn', 'cool spray', 2_900, 'A'],
        ['Memorial lawn', 'warm nozzle', 4_400, 'A'],
        ['Cloister beds', 'perennials drip', 1_300, 'B', { sun: 'shade' }],
        ['Lane hedge', 'shrubs drip', 2_200, 'B', { need: 'moderate', species: [['Buxus sempervirens', 90, 'moderate']] }],
        ['Olive row', 'trees drip', 1_600, 'B', { need: 'low', species: [['Olea europaea', 75, 'very low']] }],
      ],
    },
  ],
  backflow: [['Chapel assembly', 'vestry passage', 'pressure vacuum breaker', '2026-05-19', '2027-05-19']],
};

export const publicPlaces = [piedraLanePark, sycamoreStreetLibrary, depotGreen, brackenWayStrip, fennelHollowChapel];
