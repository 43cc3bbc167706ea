// Offices and a clinic. A zone is [name, 'plants method', area in sq ft, program, more].
const EAST = { station: 'Fennel Hollow East', supplier: 'Fennel Hollow Water' };

const lawn = (name, area, more) => [name, 'cool rotor', area, 'A', more];
const island = (name, area, more) => [name, 'shrubs drip', area, 'B', more];
const PARK = {
  A: { days: 'Mon Tue Thu Sat', shoulder: 'Mon Thu', starts: '01:00' },
  B: { days: 'Mon Wed Sat', shoulder: 'Mon Fri', starts: '21:00' },
};

const saltbushBusinessPark = {
  ...EAST,
  name: 'Saltbush Business Park',
  client: 'Saltbush Owners',
  address: '900 Saltbush Drive',
  at: [38.0523, -120.9531],
  elevationFt: 209,
  allowance: { etaf: 0.7 },
  soil: 'clay loam',
  flowSource: 'measured',
  audited: true,
  lastRead: '2026-09-21T11:05',
  meters: [{ name: 'Irrigation', unit: 'CCF', sizeIn: 3, maxGpm: 300, psi: 68, first: 40_218.3, since: '2015-11-10', feed: true }],
  programs: PARK,
  controllers: [
    {
      name: 'A',
      model: 'large',
      location: 'Building 1, electrical room',
      history: { noPausesSince: '2026-05-01', changes: [{ at: '2026-06-16T12:30', record: 'left', times: 1.2 }] },
      zones: [
        lawn('Drive lawn 1', 9_800),
        lawn('Drive lawn 2', 9_400),
        lawn('Building 1 lawn', 8_700),
        island('Building 1 shrubs', 5_200, { need: 'moderate' }),
        island('Drive islands 1', 5_900),
        island('Drive islands 2', 5_500),
        ['Sign beds', 'annuals drip', 600, 'B'],
        ['Drive trees 1', 'trees bubbler', 3_700, 'B'],
      ],
    },
    {
      name: 'B',
      model: 'large',
      location: 'Building 2, north wall',
      programs: { A: { ...PARK.A, starts: '01:30' }, B: { ...PARK.B, starts: '21:30' } },
      history: { noPausesSince: '2026-05-01', changes: [{ at: '2026-06-16T14:10', record: 'left', times: 1.2 }] },
      zones: [
        lawn('Building 2 lawn, front', 9_100),
        lawn('Building 2 lawn, side', 8_200),
        island('Building 2 shrubs', 4_800, { need: 'moderate' }),
        island('Building 2 hedge', 3_900, { need: 'moderate' }),
        island('East islands', 6_300),
        ['East bank', 'groundcover drip', 7_800, 'B', { slope: 11 }],
        [
          'Courtyard',
          'mixed drip',
          2_100,
          'B',
          {
            sun: 'shade',
            species: [
              ['Hemerocallis spp.', 50, 'moderate'],
              ['Phormium tenax', 30, 'low'],
            ],
          },
        ],
        ['East trees', 'trees bubbler', 2_900, 'B'],
      ],
    },
    {
      name: 'C',
      model: 'able',
      location: 'Building 3, loading side',
      programs: { A: { ...PARK.A, starts: '04:00' }, B: { ...PARK.B, starts: '22:30' } },
      zones: [
        lawn('Building 3 lawn', 8_900),
        island('Building 3 shrubs', 4_600, { need: 'moderate' }),
        island('West islands', 5_700),
        ['West bank', 'groundcover sub', 5_400, 'B'],
        ['Lunch court beds', 'perennials drip', 1_200, 'B'],
        ['West trees', 'trees bubbler', 2_600, 'B'],
      ],
    },
  ],
  // A rotor head has lost its nozzle on the second drive lawn.
  faults: [{ zone: 'Drive lawn 2', factor: 1.36, since: '2026-09-08T00:00' }],
  backflow: [['Saltbush assembly', 'vault by the drive', 'reduced pressure', '2026-04-02', '2027-04-02']],
};

const juniperCourtOffices = {
  ...EAST,
  name: 'Juniper Court Offices',
  client: 'Juniper Court',
  address: '33 Juniper Court',
  at: [38.0786, -120.9664],
  elevationFt: 258,
  allowance: { etaf: 0.7 },
  soil: 'sandy loam',
  flowSource: 'measured',
  meters: [{ name: 'Irrigation', unit: 'CCF', first: 5_640.1, since: '2017-02-01' }],
  programs: {
    A: { days: 'Mon Tue Thu Sat', shoulder: 'Mon Thu', starts: '03:00' },
    B: { days: 'Mon Wed Fri', shoulder: 'Mon Fri', starts: '20:30' },
  },
  controllers: [
    {
      name: 'A',
      model: 'able',
      location: 'Lobby closet',
      zones: [
        ['Lobby lawn', 'cool spray', 2_800, 'A'],
        ['Court lawn', 'cool nozzle', 4_900, 'A'],
        ['Lobby beds', 'perennials drip', 1_400, 'B'],
        ['North shrubs', 'shrubs drip', 3_300, 'B'],
        ['North trees', 'trees bubbler', 1_800, 'B'],
      ],
    },
    {
      name: 'B',
      model: 'usual',
      location: 'South stair, ground floor',
      programs: {
        A: { days: 'Mon Tue Thu Sat', shoulder: 'Mon Thu', starts: '04:30' },
        B: { days: 'Mon Wed Fri', shoulder: 'Mon Fri', starts: '21:30' },
      },
      // Raised for the heat of June, and nobody has been back to it.
      history: { stopAfter: '2026-06-05T00:00', changes: [{ at: '2026-06-12T13:15', record: 'left', percent: 140 }] },
      zones: [
        ['South lawn', 'cool spray', 2_900, 'A'],
        ['Stair lawn', 'cool spray', 1_700, 'A'],
        ['South shrubs', 'shrubs drip', 3_800, 'B', { need: 'moderate' }],
        ['Patio pots line', 'annuals drip', 250, 'B'],
        ['South groundcover', 'groundcover micro', 2_600, 'B', { need: 'moderate' }],
      ],
    },
  ],
  backflow: [['Juniper assembly', 'lobby planter', 'reduced pressure', '2025-10-21', '2026-10-21']],
};

const willowBendClinic = {
  ...EAST,
  name: 'Willow Bend Clinic',
  client: 'Willow Bend',
  address: '70 Willow Bend',
  at: [38.0728, -120.9548],
  elevationFt: 247,
  allowance: { etaf: 0.7 },
  soil: 'loam',
  flowSource: 'measured',
  notes: 'One meter for the building and the garden: never shut it without asking the clinic.',
  meters: [
    {
      name: 'Main',
      kind: 'mixed',
      unit: 'CCF',
      sizeIn: 1.5,
      first: 6_071.4,
      since: '2012-04-18',
      indoor: { gallons: 620, stated: true, opens: 7, closes: 19, closed: 'Sun' },
    },
  ],
  programs: { A: { days: 'Mon Thu', starts: '21:00' }, B: { days: 'Mon Tue Thu Sat', shoulder: 'Mon Thu', starts: '03:30' } },
  controllers: [
    {
      name: 'A',
      model: 'able',
      location: 'Staff entrance',
      history: { stopAfter: '2026-07-05T00:00' },
      zones: [
        ['Ramp lawn', 'cool spray', 3_600, 'B'],
        ['Waiting room lawn', 'cool spray', 4_100, 'B'],
        ['Staff lawn', 'cool nozzle', 3_400, 'B'],
        [
          'Healing garden',
          'perennials drip',
          1_700,
          'A',
          {
            species: [
              ['Lavandula angustifolia', 50, 'low'],
              ['Salvia nemorosa', 50, 'moderate'],
            ],
          },
        ],
        ['Street shrubs', 'shrubs drip', 3_200, 'A'],
        ['Bend trees', 'trees bubbler', 1_800, 'A'],
      ],
    },
  ],
  backflow: [['Clinic assembly', 'staff entrance', 'reduced pressure', '2026-07-07', '2027-07-07']],
};

export const offices = [saltbushBusinessPark, juniperCourtOffices, willowBendClinic];
