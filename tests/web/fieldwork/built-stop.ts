import { builtCrew, builtProperty, builtWorkOrder } from '../support/built.js';

/** Built things of the field: one stop on Quail Commons, its meter, controller and zones, as the server would give them. */
export const NOW = '2026-09-24T17:43:00Z';

export const me = {
  memberId: 'me',
  role: 'crewLead',
  permissions: [],
  crewIds: ['crew-1'],
  person: { id: 'p-dell', name: 'Dell Okafor', email: 'dell@larkspur.example', language: 'en' },
  memberships: [],
  organization: {
    id: 'o-larkspur',
    version: 1,
    name: 'Larkspur Grounds',
    units: 'us',
    language: 'en',
    timeZone: 'America/Los_Angeles',
    currency: 'USD',
    today: '2026-09-24',
    now: NOW,
    isDemo: false,
    leastLitres: 1,
    leastMoney: 1,
    leastConfidence: 0.9,
  },
};

const program = (days: string, minutes: readonly number[], given: object = {}) => ({
  name: 'B',
  days,
  starts: ['03:00'],
  adjustPercent: 100,
  stations: minutes.map((each, at) => ({ station: at + 1, minutes: each, cycles: 1, soakMinutes: 0 })),
  ...given,
});

export const builtSettings = (id: string, record: string, programs: readonly object[], given: object = {}) => ({
  id,
  controllerId: 'c1',
  effectiveAt: '2026-09-15T20:00:00Z',
  localTime: '2026-09-15T13:00',
  record,
  state: 'on',
  programs,
  recordedAt: '2026-09-15T20:00:00Z',
  recordedBy: 'Dell Okafor',
  ...given,
});

export const planned = builtSettings('s-planned', 'planned', [program('Mon Tue Thu Fri Sun', [32, 25])]);
export const present = builtSettings('s-present', 'left', [program('daily', [36, 25])]);

export const builtController = (given: object = {}) => ({
  id: 'c1',
  version: 1,
  propertyId: 'p1',
  name: '1',
  location: 'Clubhouse, behind the pool equipment gate',
  stations: 12,
  retiredAt: null,
  rainPauses: [],
  plannedSettings: planned,
  presentSettings: present,
  ...given,
});

export const builtMeter = (given: object = {}) => ({
  id: 'm1',
  version: 1,
  propertyId: 'p1',
  name: 'Irrigation',
  kind: 'irrigation',
  water: 'potable',
  unit: 'CCF',
  multiplier: 1,
  resolution: 0.1,
  retiredAt: null,
  removedOn: null,
  readings: [
    {
      id: 'r0',
      meterId: 'm1',
      readAt: '2026-09-15T21:00:00Z',
      register: 18715.9,
      source: 'crew',
      judgement: 'ok',
      findings: [],
      recordedAt: '2026-09-15T21:00:00Z',
    },
  ],
  bills: [],
  ...given,
});

const zone = (station: number, name: string) => ({
  id: `z${station}`,
  version: 1,
  propertyId: 'p1',
  controllerId: 'c1',
  station,
  name,
  areaM2: 400,
  method: 'rotor',
  plants: 'turf cool-season',
  sun: 'full',
  flowLPerMin: 212,
  unmetered: false,
  retiredAt: null,
  plantings: [],
});

export const property = builtProperty('p1', 'Quail Commons', {
  notes: 'Gate code at the office. The dog is friendly.',
  meters: [builtMeter()],
  controllers: [builtController()],
  zones: [zone(2, 'south'), zone(1, 'north')],
});

export const builtVisit = (given: object = {}) => ({
  id: 'v1',
  version: 1,
  propertyId: 'p1',
  stopId: 'st1',
  crewId: 'crew-1',
  arrivedAt: '2026-09-24T17:00:00Z',
  closedAt: null,
  doneNote: null,
  leftNote: null,
  recordedBy: 'Dell Okafor',
  materials: [],
  zoneNotes: [],
  zoneTests: [],
  ...given,
});

export const order = builtWorkOrder('w1', 'adjust', {
  state: 'given out',
  what: 'Set program B as planned',
  estimateMinutes: 45,
  finding: null,
});

/** A stop of a route with two; the second is Old Mill Shops. */
export function builtStop(given: object = {}) {
  const route = { id: 'ro1', version: 1, day: '2026-09-24', note: null, crew: builtCrew('crew-1', 'Crew 1') };
  const other = {
    id: 'st2',
    version: 1,
    position: 2,
    cautions: [],
    property: builtProperty('p2', 'Old Mill Shops'),
    visit: null,
    workOrders: [],
    route,
  };
  const stop: Record<string, unknown> = {
    id: 'st1',
    version: 1,
    position: 1,
    cautions: ['access-note', 'mains-voltage'],
    property,
    visit: null,
    workOrders: [order],
    ...given,
  };
  stop['route'] = { ...route, stops: [stop, other] };
  return stop;
}
