// Homeowner associations. A zone is [name, 'plants method', area in sq ft, program, more].
const ASSEMBLY = 'reduced pressure';

const quailCommons = {
  name: 'Quail Commons',
  client: 'Quail Commons HOA',
  address: '14 Larch Way',
  at: [38.0742, -120.9689],
  elevationFt: 241,
  station: 'Fennel Hollow East',
  supplier: 'Fennel Hollow Water',
  allowance: { etaf: 0.8 },
  soil: 'clay loam',
  flowSource: 'measured',
  audited: true,
  weekly: true,
  lastRead: '2026-09-22T14:10',
  notes: 'Meter box at the Larch Way entry, left of the sign. Mains voltage behind the lower door of the controller cabinet.',
  meters: [{ name: 'Irrigation', unit: 'CCF', sizeIn: 1.5, maxGpm: 100, psi: 66, first: 12_418.6, since: '2014-04-02', feed: true }],
  programs: {
    A: { days: 'Tue Thu Sat', shoulder: 'Tue Sat', starts: '21:30' },
    B: { days: 'daily', shoulder: 'Mon Wed Fri Sun', starts: '03:00' },
  },
  controllers: [
    {
      name: '1',
      model: 'usual',
      location: 'Clubhouse, behind the pool equipment gate',
      history: { stopAfter: '2026-07-04T00:00', planned: { at: '2026-09-28T07:30', days: { A: 'Tue Sat', B: 'Mon Tue Thu Fri Sun' } } },
      zones: [
        ['Clubhouse lawn, north', 'cool rotor', 12_560, 'B', { species: [['Festuca arundinacea', 100, 'high', '2014-10-01']] }],
        ['Clubhouse lawn, south', 'cool rotor', 12_600, 'B'],
        ['Pool lawn', 'cool rotor', 9_350, 'B'],
        ['Entry lawn, Larch Way', 'cool rotor', 10_280, 'B'],
        ['Play lawn', 'cool rotor', 12_860, 'B', { flowGpm: 56, times: 0.74 }],
        [
          'Entry beds',
          'perennials drip',
          6_900,
          'A',
          {
            species: [
              ['Lantana camara', 55, 'low'],
              ['Salvia nemorosa', 45, 'moderate'],
            ],
          },
        ],
        [
          'Pond walk shrubs',
          'shrubs drip',
          9_800,
          'A',
          {
            need: 'moderate',
            species: [
              ['Rosmarinus officinalis', 60, 'low'],
              ['Cistus x purpureus', 40, 'low'],
            ],
          },
        ],
        [
          'Pool beds',
          'perennials micro',
          6_100,
          'A',
          {
            species: [
              ['Hemerocallis spp.', 60, 'moderate'],
              ['Salvia nemorosa', 40, 'moderate'],
            ],
          },
        ],
        [
          'Parkway trees',
          'trees bubbler',
          6_200,
          'A',
          { times: 0.38, establishedOn: '2026-03-10', species: [['Platanus racemosa', 70, 'moderate', '2024-11-15']] },
        ],
        ['Hillside groundcover', 'groundcover drip', 9_700, 'A', { slope: 14, species: [['Baccharis pilularis', 90, 'low']] }],
        [
          'Clubhouse beds',
          'mixed drip',
          5_920,
          'A',
          {
            species: [
              ['Rosmarinus officinalis', 70, 'low'],
              ['Betula pendula', 20, 'high', '2016-02-20'],
            ],
          },
        ],
      ],
    },
  ],
  // The play lawn's valve is held open since it ran early on 6 September.
  faults: [{ leak: 'Irrigation', gpm: 2.1, since: '2026-09-06T05:10' }],
  backflow: [['Larch Way assembly', 'beside the meter', ASSEMBLY, '2026-04-14', '2027-04-14']],
};

const cutbankTrail = {
  name: 'Cutbank Trail',
  client: 'Cutbank Trail HOA',
  address: '415 Cutbank Trail',
  at: [38.1163, -120.9317],
  elevationFt: 347,
  station: 'Piedra Bench',
  supplier: 'Piedra Creek Irrigation District',
  allowance: { etaf: 0.7 },
  soil: 'silt loam',
  flowSource: 'measured',
  weekly: true,
  meters: [{ name: 'Irrigation', unit: 'CCF', first: 6_602.9, since: '2011-07-19' }],
  programs: { A: { days: 'Mon Wed Fri', starts: '01:00' }, B: { days: 'Mon Thu', starts: '20:00' } },
  controllers: [
    {
      name: 'A',
      model: 'able',
      location: 'Mail kiosk, back side',
      // A board member cut three lawns by hand; the crew found it on 2 September and was asked to leave it.
      history: {
        changes: [
          { at: '2026-09-02T11:30', record: 'found', times: 0.62, zones: ['Trail lawn, north', 'Trail lawn, south', 'Overlook lawn'] },
        ],
      },
      zones: [
        ['Trail lawn, north', 'cool rotor', 9_600, 'A'],
        ['Trail lawn, south', 'cool rotor', 8_900, 'A'],
        ['Overlook lawn', 'cool rotor', 7_800, 'A', { slope: 5 }],
        ['Kiosk beds', 'perennials drip', 1_900, 'B'],
        ['Trail shrubs', 'shrubs drip', 8_800, 'B', { need: 'low' }],
        ['Cutbank natives', 'groundcover drip', 6_100, 'B', { need: 'very low', slope: 22 }],
        ['Trailhead trees', 'trees bubbler', 2_700, 'B', { species: [['Cercis occidentalis', 80, 'very low']] }],
      ],
    },
  ],
  backflow: [['Trail assembly', 'mail kiosk', 'pressure vacuum breaker', '2025-11-04', '2026-11-04']],
};

const larchTerrace = {
  name: 'Larch Terrace',
  client: 'Larch Terrace HOA',
  address: '92 Larch Terrace',
  at: [38.1092, -120.9276],
  elevationFt: 361,
  station: 'Piedra Bench',
  supplier: 'Piedra Creek Irrigation District',
  allowance: { etaf: 0.7 },
  soil: 'loam',
  flowSource: 'assumed',
  readFrom: '2026-07-06T00:00',
  weekly: true,
  extraReadings: ['2026-07-08T11:10'],
  bills: { from: '2025-07', to: '2026-07', day: 20, endIncluded: true },
  notes: 'With us since July 2026. The controller cabinet is locked; the board looks for the key.',
  meters: [{ name: 'Irrigation', unit: 'CCF', first: 5_118.3, since: '2010-03-15' }],
  programs: { A: { days: 'Tue Thu Sat', starts: '02:00' }, B: { days: 'Tue Sat', starts: '20:15' } },
  controllers: [
    {
      name: 'A',
      model: 'usual',
      location: 'Locked cabinet by the tennis court',
      known: false,
      unknownAt: ['2026-07-08T11:05', '2026-09-01T13:20'],
      history: { fixedPercent: 130, noPauses: true },
      zones: [
        ['Terrace lawn, east', 'cool rotor', 8_800, 'A', { duUnknown: true }],
        ['Terrace lawn, west', 'cool rotor', 9_100, 'A', { duUnknown: true }],
        ['Court lawn', 'cool spray', 3_600, 'A', { duUnknown: true }],
        ['Gate lawn', 'cool spray', 2_900, 'A', { duUnknown: true }],
        ['Court hedge', 'shrubs drip', 4_400, 'B', { need: 'moderate' }],
        ['Terrace shrubs', 'shrubs drip', 6_900, 'B'],
        ['Gate beds', 'perennials drip', 1_700, 'B'],
        ['Street trees', 'trees bubbler', 3_300, 'B'],
      ],
    },
  ],
  backflow: [['Terrace assembly', 'tennis court', ASSEMBLY, '2024-09-12', '2025-09-12']],
};

export const associations = [quailCommons, cutbankTrail, larchTerrace];
