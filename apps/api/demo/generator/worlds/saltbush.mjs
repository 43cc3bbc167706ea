// A second company in the same valley, which must never see the first. One of its properties has the same name as one of Larkspur's.
const RUSH = { station: 'Rush Basin', supplier: 'Rush Basin Mutual Water' };
const EXEMPT = 'drip, subsurface drip, bubbler, hand';

const rushBasinMutualWater = {
  name: 'Rush Basin Mutual Water',
  billUnit: 'kgal',
  rules: [
    {
      name: 'Three days a week',
      days_per_week: 3,
      blocked_from: '09:00',
      blocked_until: '20:00',
      exempt_methods: EXEMPT,
      effective_from: '2025-05-01',
    },
  ],
  rates: [{ from: '2025-07-01', fixed: 21, tiers: [{ upTo: 30, price: 4.4 }, { price: 6.1 }] }],
};

const programs = { A: { days: 'Mon Wed Fri', shoulder: 'Mon Fri', starts: '02:30' }, B: { days: 'Tue Sat', starts: '20:30' } };
const meter = (name, first, more) => ({
  name,
  unit: 'kgal',
  resolution: 0.01,
  digits: 7,
  sizeIn: 1,
  maxGpm: 50,
  first,
  since: '2015-04-01',
  ...more,
});

const properties = [
  {
    ...RUSH,
    name: 'Alder Row',
    client: 'Alder Row Studios',
    address: '52 Alder Row',
    at: [38.0203, -120.9922],
    elevationFt: 188,
    allowance: { etaf: 0.7 },
    soil: 'loam',
    flowSource: 'measured',
    meters: [meter('Garden', 822.35)],
    programs,
    controllers: [
      {
        name: 'A',
        model: 'usual',
        location: 'Kiln yard',
        history: { style: 'minutes' },
        zones: [
          ['Studio lawn', 'cool spray', 2_700, 'A'],
          ['Yard lawn', 'warm rotor', 5_200, 'A'],
          ['Kiln shrubs', 'shrubs drip', 2_300, 'B'],
          ['Yard trees', 'trees bubbler', 1_300, 'B'],
        ],
      },
    ],
  },
  {
    ...RUSH,
    name: 'Basin View',
    client: 'Basin View Homes',
    address: '10 Basin View',
    at: [38.0251, -121.0014],
    elevationFt: 195,
    allowance: { etaf: 0.8 },
    soil: 'clay loam',
    flowSource: 'measured',
    audited: true,
    lastRead: '2026-09-21T13:25',
    meters: [meter('Irrigation', 3_410.52, { sizeIn: 1.5, maxGpm: 100 })],
    programs,
    controllers: [
      {
        name: 'A',
        model: 'able',
        location: 'Clubroom',
        history: { stopAfter: '2026-07-05T00:00' },
        zones: [
          ['Basin lawn, east', 'cool rotor', 8_300, 'A'],
          ['Basin lawn, west', 'cool rotor', 8_800, 'A'],
          ['View lawn', 'cool spray', 2_600, 'A'],
          ['Clubroom beds', 'perennials drip', 1_400, 'B'],
          ['View shrubs', 'shrubs drip', 5_100, 'B'],
          ['Basin trees', 'trees bubbler', 2_200, 'B'],
        ],
      },
    ],
    backflow: [['Basin assembly', 'clubroom', 'reduced pressure', '2026-04-09', '2027-04-09']],
  },
  {
    ...RUSH,
    name: 'Reedbed Storage',
    client: 'Reedbed Storage',
    address: '400 Levee Road',
    at: [38.0167, -120.9853],
    elevationFt: 182,
    allowance: { etaf: 0.45 },
    soil: 'silty clay',
    flowSource: 'nameplate',
    meters: [meter('Irrigation', 1_205.18)],
    programs,
    controllers: [
      {
        name: 'A',
        model: 'plain',
        location: 'Office, unit 1',
        history: { style: 'minutes' },
        zones: [
          ['Levee shrubs', 'shrubs drip', 6_400, 'B'],
          ['Office lawn', 'cool spray', 1_800, 'A'],
          ['Fence groundcover', 'groundcover drip', 4_900, 'B'],
          ['Gate beds', 'perennials drip', 700, 'B'],
        ],
      },
    ],
    faults: [{ leak: 'Irrigation', gpm: 0.9, since: '2026-08-20T03:00' }],
  },
  {
    ...RUSH,
    name: 'Tern House',
    client: 'Tern House',
    address: '7 Tern Lane',
    at: [38.0288, -120.9798],
    elevationFt: 201,
    allowance: { etaf: 0.55 },
    soil: 'sandy loam',
    flowSource: 'nameplate',
    meters: [meter('House', 411.07, { kind: 'mixed', sizeIn: 0.75, maxGpm: 30, indoor: { gallons: 150, stated: true } })],
    programs,
    controllers: [
      {
        name: 'A',
        model: 'plain',
        location: 'Porch',
        history: { style: 'minutes' },
        zones: [
          ['Porch lawn', 'cool spray', 1_500, 'A'],
          ['Lane lawn', 'cool spray', 1_200, 'A'],
          ['Tern beds', 'perennials drip', 600, 'B'],
          ['Porch trees', 'trees bubbler', 500, 'B'],
        ],
      },
    ],
  },
  {
    ...RUSH,
    name: 'Willet Clinic',
    client: 'Willet Health Rooms',
    address: '85 Basin Road',
    at: [38.0226, -120.9969],
    elevationFt: 190,
    allowance: { etaf: 0.45 },
    soil: 'loam',
    flowSource: 'measured',
    meters: [meter('Irrigation', 960.44)],
    programs,
    controllers: [
      {
        name: 'A',
        model: 'able',
        location: 'Side entrance',
        zones: [
          ['Entrance lawn', 'cool nozzle', 3_800, 'A'],
          ['Side beds', 'perennials drip', 1_200, 'B'],
          ['Road shrubs', 'shrubs drip', 3_900, 'B', { need: 'moderate' }],
          ['Willet trees', 'trees bubbler', 1_600, 'B'],
          ['Car park groundcover', 'groundcover drip', 2_700, 'B'],
        ],
      },
    ],
    backflow: [['Willet assembly', 'side entrance', 'reduced pressure', '2026-02-11', '2027-02-11']],
  },
];

export const saltbushLandscape = {
  folder: 'saltbush-landscape',
  valley: 'Fennel Hollow',
  city: 'Fennel Hollow',
  stations: [
    {
      name: 'Rush Basin',
      latitude: 38.021,
      longitude: -120.99,
      elevationFt: 186,
      warmer: 0.4,
      wetter: 0.92,
      windier: 1.05,
      sensors: 'all',
      rainLost: [],
    },
  ],
  suppliers: [rushBasinMutualWater],
  clients: properties.map(({ client }) => ({ name: client, emails: '', notToExceed: 250 })),
  properties,
};
