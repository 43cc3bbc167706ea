import { PropertyPage } from '../../../apps/web/src/features/property/PropertyPage.js';
import { builtAccount, builtCrew, builtFinding, builtProperty, builtWorkOrder, gallons } from '../support/built.js';
import { drawPage, type viewerOf } from '../support/draw-page.js';

const zone = (id: string, name: string, station: number, given: object = {}) => ({
  id,
  version: 1,
  propertyId: 'p1',
  name,
  station,
  unmetered: false,
  areaM2: 900,
  plants: 'turf cool-season',
  method: 'rotor',
  plantings: [],
  ...given,
});
const line = (zoneId: string, needed: number | null, programmed: number | null, given: object = {}) => ({
  zoneId,
  neededLitres: needed === null ? null : gallons(needed),
  programmedLitres: programmed === null ? null : gallons(programmed),
  overLitres: needed === null || programmed === null ? null : Math.max(0, gallons(programmed - needed)),
  underLitres: needed === null || programmed === null ? null : Math.max(0, gallons(needed - programmed)),
  minutes: programmed === null ? null : 500,
  reason: null,
  ...given,
});
const program = (name: string, days: string, minutes: number, given: object = {}) => ({
  name,
  days,
  starts: ['21:30'],
  adjustPercent: 100,
  stations: [
    { station: 3, minutes },
    { station: 9, minutes: 20 },
  ],
  ...given,
});
const settings = (id: string, localTime: string, record: string, programs: readonly object[], given: object = {}) => ({
  id,
  controllerId: 'c1',
  effectiveAt: `${localTime}:00Z`,
  localTime,
  record,
  state: 'on',
  programs,
  recordedBy: 'Marisol Vance',
  recordedAt: `${localTime}:00Z`,
  ...given,
});
const july = settings('s8', '2026-07-01T08:00', 'left', [program('A', 'Tue Thu Sat', 40)]);
const found = settings('s8b', '2026-08-20T08:00', 'found', [program('A', 'Tue Thu Sat', 40)]);
const june = settings('s7', '2026-06-01T08:00', 'left', [program('A', 'Tue Sat', 30, { adjustPercent: 90 })]);
const planned = settings('s9', '2026-09-28T08:00', 'planned', [program('A', 'Tue Sat', 40)], { recordedBy: null });

export const controller = {
  id: 'c1',
  version: 1,
  propertyId: 'p1',
  name: 'Clubhouse',
  stations: 12,
  programs: 3,
  location: 'behind the pool gate',
  settings: [planned, found, july, june],
  presentSettings: july,
  plannedSettings: planned,
  inferredSettings: null,
  rainPauses: [],
};

const reading = (id: string, readAt: string, register: number, given: object = {}) => ({
  id,
  meterId: 'm1',
  readAt,
  register,
  source: 'crew',
  recordedBy: 'Marisol Vance',
  recordedAt: readAt,
  litresSinceLast: gallons(118_900),
  judgement: 'ok',
  findings: [],
  ...given,
});
export const meter = {
  id: 'm1',
  version: 1,
  propertyId: 'p1',
  name: 'Irrigation',
  kind: 'irrigation',
  water: 'recycled',
  unit: 'CCF',
  multiplier: 1,
  pricePerUnit: 4.23,
  readings: [
    reading('r1', '2026-09-15T14:15:00Z', 18_715.9),
    reading('r2', '2026-09-24T13:50:00Z', 18_922.9, { judgement: 'implausibly high' }),
  ],
  usageDays: [],
  bills: [],
};

const crew2 = builtCrew('crew-2', 'Crew 2');
const order = builtWorkOrder('w1', 'adjust', { state: 'given out', crew: crew2, day: '2026-09-28', what: 'Two days a week' });
const built = builtAccount(
  'a9',
  { allowed: 252_100, needed: 238_500, programmed: 331_200, metered: 389_600 },
  {
    overLitres: gallons(101_900),
    underLitres: gallons(9200),
    zones: [
      line('z1', 34_100, 50_100),
      line('z2', 15_900, 8000),
      line('z3', 12_100, null, { reason: { code: 'flow-not-known', details: { zones: ['z3'] } } }),
    ],
    notes: [
      { code: 'input-assumed', details: { zoneId: 'z1', input: 'duLq' } },
      { code: 'input-assumed', details: { zoneId: 'z2', input: 'duLq' } },
    ],
  },
);
export const account = {
  ...built,
  aboveNeed: {
    ...built.aboveNeed,
    inputs: [
      { input: 'plantFactor', subjectId: 'z1', share: 0.61 },
      { input: 'meter', subjectId: 'm1', share: 0.3 },
      { input: 'rain', subjectId: null, share: 0.001 },
    ],
  },
  unexplainedGap: {
    ...built.unexplainedGap,
    estimate: { code: 'settings-from-weather', details: { zones: ['z2'], controllerId: 'c1' } },
  },
  settingsGap: {
    ...built.settingsGap,
    inputs: [
      { input: 'settingsFromWeather', subjectId: 'c1', share: 0.7 },
      { input: 'flow', subjectId: 'z2', share: 0.2 },
      { input: 'eto', subjectId: null, share: 0.05 },
    ],
  },
};
const august = builtAccount(
  'a8',
  { allowed: 375_200, needed: 357_300, programmed: 359_000, metered: 359_500 },
  { month: '2026-08', through: '2026-08-31', daysCovered: 31, daysInMonth: 31 },
);
export const september = { ...builtAccount('a9', {}), ...account };

const quail = builtProperty('p1', 'Quail Commons', {
  notes: 'The dog is kind.',
  zones: [zone('z2', 'Parkway trees', 9), zone('z1', 'Pool lawn', 3), zone('z3', 'Entry beds', 11)],
  controllers: [controller],
  meters: [meter],
  backflowAssemblies: [{ id: 'b1', version: 1, propertyId: 'p1', name: 'Street side', nextTestDueOn: '2026-09-01' }],
  ordinanceYear: { litres: gallons(1_180_000), reason: null },
  account: ({ month }: { month?: string | null }) => [august, september].find((each) => each.month === (month ?? '2026-09')) ?? null,
  accounts: [august, september],
  findings: [
    builtFinding('f2', 'mixed water needs', { state: 'dismissed', dismissedWhy: 'the board keeps the birches', litres: null, money: null }),
    builtFinding('f1', 'over-programmed', {
      state: 'in work',
      workOrders: [order],
      says: { code: 'over-programmed', details: { programs: ['A'], zoneIds: ['z1'], percentOfNow: 72 } },
    }),
    builtFinding('f3', 'unexplained use', {
      says: {
        code: 'unexplained use',
        details: { meteredLitres: gallons(389_600), programmedLitres: gallons(331_200), ratio: 1.18, usualRatio: null },
      },
    }),
  ],
  workOrders: [
    order,
    builtWorkOrder('w0', 'read', { state: 'done', doneAt: '2026-09-01T15:00:00Z', doneNote: 'read and photographed', cost: 40 }),
  ],
  visits: [
    {
      id: 'v1',
      version: 1,
      propertyId: 'p1',
      arrivedAt: '2026-09-15T14:10:00Z',
      closedAt: null,
      doneNote: 'Meter read',
      recordedBy: 'Marisol Vance',
      workedMinutes: 90,
      materials: [{ name: 'nozzle', count: 2, unit: null }],
      zoneNotes: [],
      zoneTests: [{ id: 't1', zoneId: 'z1', kind: 'flow', flowLPerMin: 75.70823568, duLq: null, catchesMl: [], onRecord: true }],
      photos: [
        { id: 'ph1', takenAt: '2026-09-15T14:20:00Z', arrivedAt: '2026-09-15T15:00:00Z' },
        { id: 'ph2', takenAt: '2026-09-15T14:21:00Z', arrivedAt: null },
      ],
    },
  ],
  changes: [
    {
      id: 'ch1',
      thing: 'zone',
      thingId: 'z1',
      deed: 'change',
      before: { areaM2: 800 },
      after: { areaM2: 900 },
      by: 'June Halvorsen',
      way: 'screen',
      at: '2026-09-02T15:00:00Z',
    },
  ],
});

interface Given {
  readonly at?: string;
  readonly property?: object;
  readonly more?: Record<string, unknown>;
  readonly viewer?: ReturnType<typeof viewerOf>;
  readonly language?: 'en' | 'es';
  readonly units?: 'us' | 'metric';
}

export const page = ({ at = '/properties/p1', property = {}, more = {}, ...rest }: Given = {}) =>
  drawPage(<PropertyPage />, { at, route: '/properties/:id', answers: { property: { ...quail, ...property }, ...more }, ...rest });
