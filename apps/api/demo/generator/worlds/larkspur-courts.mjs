// Courts and flats. A zone is [name, 'plants method', area in sq ft, program, more].
const EAST = { station: 'Fennel Hollow East', supplier: 'Fennel Hollow Water' };
const BENCH = { station: 'Piedra Bench', supplier: 'Piedra Creek Irrigation District' };

const alderRow = {
  ...EAST,
  name: 'Alder Row',
  client: 'Alder Row Duplexes',
  address: '3 to 17 Alder Row',
  at: [38.0641, -120.9602],
  elevationFt: 226,
  allowance: { etaf: 0.8 },
  soil: 'loam',
  flowSource: 'nameplate',
  meters: [{ name: 'Irrigation', unit: 'kgal', resolution: 0.1, sizeIn: 1, maxGpm: 50, first: 1_904.7, since: '2005-05-24' }],
  programs: { A: { days: 'Mon Tue Thu Sat', shoulder: 'Mon Thu', starts: '05:00' }, B: { days: 'Mon Fri', starts: '06:00' } },
  controllers: [
    {
      name: 'A',
      model: 'plain',
      location: 'Carport 4',
      history: { style: 'minutes', stopAfter: '2026-07-05T00:00' },
      zones: [
        ['Front lawns, north', 'cool spray', 2_200, 'A', { duUnknown: true }],
        ['Front lawns, south', 'cool spray', 2_500, 'A', { duUnknown: true }],
        ['Back lawns', 'warm spray', 3_100, 'A'],
        ['Row hedge', 'shrubs drip', 1_700, 'B', { need: 'moderate' }],
        ['Alders', 'trees bubbler', 1_200, 'B', { need: 'high' }],
      ],
    },
  ],
};

const pepperwoodCourt = {
  ...EAST,
  name: 'Pepperwood Court',
  client: 'Pepperwood Tenants',
  address: '12 Pepperwood Court',
  at: [38.0798, -120.9745],
  elevationFt: 251,
  allowance: { etaf: 0.8 },
  soil: 'clay loam',
  flowSource: 'measured',
  lastRead: '2026-09-22T15:05',
  misread: '2026-09-22',
  meters: [{ name: 'Irrigation', unit: 'CCF', sizeIn: 1.5, maxGpm: 100, first: 3_541.9, since: '2011-10-03' }],
  programs: { A: { days: 'Mon Tue Thu Sat', shoulder: 'Mon Thu', starts: '04:30' }, B: { days: 'Mon Thu', starts: '21:00' } },
  controllers: [
    {
      name: 'A',
      model: 'able',
      location: 'Bicycle room',
      zones: [
        ['Court lawn', 'cool spray', 3_200, 'A'],
        ['Sand pit lawn', 'cool spray', 2_700, 'A'],
        ['Court shrubs', 'shrubs drip', 2_900, 'B'],
        ['Gate beds', 'perennials drip', 1_100, 'B'],
        ['Pepper trees', 'trees bubbler', 1_700, 'B', { need: 'low' }],
      ],
    },
  ],
  backflow: [['Court assembly', 'bicycle room', 'pressure vacuum breaker', '2026-04-28', '2027-04-28']],
};

const mallowCourt = {
  ...BENCH,
  name: 'Mallow Court',
  client: 'Mallow Court Owners',
  address: '58 Mallow Court',
  at: [38.1141, -120.9242],
  elevationFt: 352,
  allowance: { etaf: 0.8 },
  soil: 'sandy loam',
  flowSource: 'measured',
  notes: 'Well water. The pump house is hot in summer: carry water.',
  meters: [
    {
      name: 'Well',
      water: 'well',
      unit: 'gal',
      multiplier: 10,
      resolution: 1,
      digits: 7,
      sizeIn: 1.5,
      first: 412_660,
      pricePerUnit: '0.0021',
      since: '2014-07-15',
    },
  ],
  programs: { A: { days: 'Tue Thu Sat', starts: '01:30' }, B: { days: 'Tue Sat', starts: '20:00' } },
  controllers: [
    {
      name: 'A',
      model: 'usual',
      location: 'Pump house',
      // The spring's percent was never raised.
      history: { stopAfter: '2026-05-05T00:00', changes: [{ at: '2026-05-06T12:20', record: 'left', percent: 45 }] },
      zones: [
        ['Court lawn, west', 'cool rotor', 7_400, 'A'],
        ['Court lawn, east', 'cool rotor', 6_900, 'A'],
        ['Mallow beds', 'perennials drip', 1_600, 'B'],
        ['Bench shrubs', 'shrubs drip', 3_400, 'B', { need: 'moderate' }],
        ['Orchard', 'trees micro', 4_200, 'B', { need: 'moderate' }],
        ['Kitchen garden', 'vegetables drip', 600, 'B'],
      ],
    },
  ],
  backflow: [['Pump house assembly', 'pump house', 'double check', '2026-05-12', '2027-05-12']],
};

const orchardGate = {
  ...EAST,
  name: 'Orchard Gate',
  readingNotes: { '2026-05-30': 'First reading of the new meter.' },
  client: 'Orchard Gate HOA',
  address: '20 Orchard Gate',
  at: [38.0838, -120.9791],
  elevationFt: 271,
  allowance: { etaf: 0.7 },
  soil: 'silt loam',
  flowSource: 'measured',
  audited: true,
  meters: [
    { name: 'Irrigation', unit: 'CCF', first: 8_806.7, since: '2004-09-01', removed: '2026-05-14T11:20' },
    { name: 'Irrigation 2', unit: 'CCF', first: 0.3, installed: '2026-05-14T11:20' },
  ],
  programs: {
    A: { days: 'Mon Tue Thu Sat', shoulder: 'Mon Thu', starts: '02:00' },
    B: { days: 'Mon Wed Fri', shoulder: 'Mon Fri', starts: '20:30' },
  },
  controllers: [
    {
      name: 'A',
      model: 'able',
      location: 'Gatehouse',
      zones: [
        ['Gate lawn', 'cool rotor', 6_900, 'A'],
        ['Orchard lawn', 'cool rotor', 7_600, 'A'],
        ['Pool lawn', 'cool spray', 2_900, 'A'],
        ['Play lawn', 'warm rotor', 6_100, 'A'],
        ['Gate beds', 'perennials drip', 1_500, 'B'],
        ['Long hedge', 'shrubs drip', 4_200, 'B', { need: 'moderate' }],
        ['Bank groundcover', 'groundcover drip', 5_100, 'B', { slope: 9 }],
        ['Pear trees', 'trees bubbler', 3_300, 'B'],
      ],
    },
  ],
  backflow: [['Gate assembly', 'gatehouse', 'reduced pressure', '2026-05-14', '2027-05-14']],
};

const heronFlats = {
  ...EAST,
  name: 'Heron Flats',
  client: 'Heron Flats',
  address: '1000 Heron Way',
  at: [38.0485, -120.9683],
  elevationFt: 204,
  allowance: { contract: [3, 10, 40, 85, 130, 165, 185, 170, 125, 75, 25, 5].map((kgal) => kgal * 1000) },
  soil: 'clay loam',
  flowSource: 'measured',
  audited: true,
  meters: [{ name: 'Irrigation', unit: 'kgal', sizeIn: 2, maxGpm: 160, psi: 65, first: 18_450.6, since: '2019-02-05' }],
  programs: {
    A: { days: 'Mon Tue Thu Sat', shoulder: 'Mon Thu', starts: '01:30' },
    B: { days: 'Mon Wed Fri', shoulder: 'Mon Fri', starts: '20:30' },
  },
  controllers: [
    {
      name: 'A',
      model: 'large',
      location: 'Leasing office, utility closet',
      history: { planned: { at: '2026-10-01T07:30', days: { A: 'Mon Thu Sat', B: 'Mon Fri' } } },
      zones: [
        ['Leasing lawn', 'cool rotor', 8_200, 'A'],
        ['Heron lawn, north', 'cool rotor', 9_600, 'A'],
        ['Heron lawn, south', 'cool rotor', 9_900, 'A'],
        ['Pool lawn', 'cool spray', 3_100, 'A'],
        ['Dog run', 'warm rotor', 5_600, 'A'],
        ['Leasing annuals', 'annuals drip', 500, 'B'],
        ['Flats hedge', 'shrubs drip', 6_400, 'B', { need: 'moderate' }],
        ['Pond shrubs', 'shrubs drip', 7_200, 'B'],
        [
          'Heron trees',
          'trees bubbler',
          4_100,
          'B',
          {
            species: [
              ['Cercis occidentalis', 40, 'very low'],
              ['Quercus ilex', 40, 'low'],
            ],
          },
        ],
      ],
    },
  ],
  backflow: [['Heron assembly', 'leasing office', 'reduced pressure', '2026-03-31', '2027-03-31']],
};

const millraceLofts = {
  ...EAST,
  name: 'Millrace Lofts',
  client: 'Millrace Lofts',
  address: '9 Mill Street',
  at: [38.0612, -120.9719],
  elevationFt: 221,
  allowance: { etaf: 0.55 },
  soil: 'sandy loam',
  flowSource: 'nameplate',
  meters: [{ name: 'Irrigation', unit: 'CCF', sizeIn: 1, maxGpm: 50, first: 744.9, since: '2023-04-12' }],
  programs: { A: { days: 'odd', starts: '04:00' }, B: { days: 'every 3 from 2025-07-02', starts: '05:30' } },
  controllers: [
    {
      name: 'A',
      model: 'usual',
      location: 'Roof stair',
      history: { style: 'minutes' },
      zones: [
        ['Roof meadow', 'perennials sub', 2_600, 'A', { need: 'moderate', rootIn: 8 }],
        ['Roof lawn', 'warm sub', 2_200, 'A', { rootIn: 8 }],
        ['Court beds', 'mixed drip', 1_500, 'B', { sun: 'shade' }],
        ['Race planters', 'annuals drip', 300, 'A'],
        ['Court trees', 'trees bubbler', 900, 'B'],
      ],
    },
  ],
  backflow: [['Roof assembly', 'roof stair', 'reduced pressure', '2025-11-18', '2026-11-18']],
};

export const courts = [alderRow, pepperwoodCourt, mallowCourt, orchardGate, heronFlats, millraceLofts];
