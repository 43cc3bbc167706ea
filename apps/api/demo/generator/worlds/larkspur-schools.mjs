// The two schools. A zone is [name, 'plants method', area in sq ft, program, more].
const EAST = { station: 'Fennel Hollow East', supplier: 'Fennel Hollow Water' };

const fennelHollowElementary = {
  ...EAST,
  name: 'Fennel Hollow Elementary',
  client: 'Fennel Hollow Schools',
  address: '300 School Lane',
  at: [38.0693, -120.9737],
  elevationFt: 233,
  allowance: { etaf: 0.7, special: 66_000 },
  soil: 'loam',
  flowSource: 'measured',
  audited: true,
  lastRead: '2026-09-23T12:15',
  notes: 'Sign in at the school office. No work on the field during recess.',
  meters: [
    { name: 'Field', unit: 'CCF', sizeIn: 2, maxGpm: 160, psi: 70, first: 21_960.4, since: '2007-03-09' },
    { name: 'Grounds', unit: 'CCF', sizeIn: 1.5, psi: 64, first: 8_311.7, since: '2007-03-09' },
  ],
  programs: {
    A: { days: 'Mon Tue Thu Sat', shoulder: 'Mon Thu', starts: '02:00' },
    B: { days: 'Mon Wed Fri', shoulder: 'Mon Fri', starts: '21:30' },
  },
  controllers: [
    {
      name: 'A',
      model: 'large',
      meter: 'Field',
      location: 'Equipment shed by the ball field',
      programs: { A: { days: 'Mon Tue Thu Sat', shoulder: 'Mon Thu', starts: '20:30' } },
      // The second start was set for the overseeding of late August and never taken off.
      history: { changes: [{ at: '2026-08-31T15:50', program: 'A', starts: '20:30 02:00' }] },
      zones: ['infield', 'left field', 'left center', 'center', 'right center', 'right field'].map((part) => [
        `Ball field, ${part}`,
        'warm rotor',
        11_000,
        'A',
        { species: [['Cynodon hybrid', 100, 'moderate', '2019-05-20']] },
      ]),
    },
    {
      name: 'B',
      model: 'able',
      meter: 'Grounds',
      location: 'Boiler room corridor',
      zones: [
        ['Front lawn, flag', 'cool spray', 3_200, 'A'],
        ['Front lawn, buses', 'cool spray', 2_800, 'A'],
        ['Kindergarten lawn', 'cool spray', 2_300, 'A', { sun: 'part' }],
        ['Quad', 'cool rotor', 7_700, 'A'],
        ['Garden beds', 'vegetables drip', 900, 'B'],
        ['Entry annuals', 'annuals drip', 400, 'B', { species: [['Tagetes patula', 100, 'moderate', '2026-05-09']] }],
        ['Library shrubs', 'shrubs drip', 3_600, 'B', { need: 'moderate' }],
        ['Fence shrubs', 'shrubs drip', 5_200, 'B'],
        ['Car park groundcover', 'groundcover drip', 4_100, 'B'],
        ['Shade trees', 'trees bubbler', 3_000, 'B', { species: [['Platanus racemosa', 65, 'moderate']] }],
      ],
    },
  ],
  backflow: [
    ['Field assembly', 'equipment shed', 'reduced pressure', '2026-06-02', '2027-06-02'],
    ['Grounds assembly', 'School Lane, by the flag', 'reduced pressure', '2026-06-02', '2027-06-02'],
  ],
};

const mesquiteFlatsSchool = {
  ...EAST,
  name: 'Mesquite Flats School',
  client: 'Fennel Hollow Schools',
  address: '77 Mesquite Flats Road',
  at: [38.0431, -120.9905],
  elevationFt: 201,
  allowance: { etaf: 0.8 },
  soil: 'sandy loam',
  flowSource: 'nameplate',
  readUntil: '2026-08-05T00:00',
  extraReadings: ['2026-08-04T13:20'],
  notes: 'The gate to the meter is locked since the building work began.',
  meters: [{ name: 'Irrigation', unit: 'CCF', sizeIn: 2, maxGpm: 160, first: 15_027.5, since: '2013-01-23' }],
  programs: { A: { days: 'Mon Tue Thu Fri', shoulder: 'Mon Thu', starts: '01:00' }, B: { days: 'Tue Thu', starts: '21:00' } },
  controllers: [
    {
      name: 'A',
      model: 'able',
      location: 'Custodian room',
      zones: [
        ['Play field, north', 'warm rotor', 12_500, 'A'],
        ['Play field, middle', 'warm rotor', 12_200, 'A'],
        ['Play field, south', 'warm rotor', 11_900, 'A'],
        ['Front lawn', 'cool spray', 3_300, 'A'],
        ['Court lawn', 'cool nozzle', 4_100, 'A'],
        ['Office beds', 'perennials drip', 1_500, 'B'],
        ['Bus loop shrubs', 'shrubs drip', 3_700, 'B'],
        ['West fence shrubs', 'shrubs drip', 4_900, 'B'],
        ['Solar court groundcover', 'groundcover drip', 2_800, 'B', { density: 0.8 }],
        ['Play yard trees', 'trees bubbler', 2_200, 'B'],
        ['Garden club beds', 'vegetables drip', 700, 'B'],
      ],
    },
  ],
  backflow: [['Flats assembly', 'behind the kitchen', 'reduced pressure', '2025-09-30', '2026-09-30']],
};

export const schools = [fennelHollowElementary, mesquiteFlatsSchool];
