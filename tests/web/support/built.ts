/** Built things of an invented organization, as the server would give them. Volumes in gallons for the eye: 1 US gal is 3.785411784 L, exactly. */
export const L_PER_GAL = 3.785411784;
export const gallons = (value: number): number => value * L_PER_GAL;

interface Volumes {
  readonly allowed?: number | null;
  readonly needed?: number | null;
  readonly programmed?: number | null;
  readonly metered?: number | null;
}

type Given = Readonly<Record<string, unknown>>;

const volume = (value: number | null | undefined, code: string) =>
  value === null || value === undefined
    ? { litres: null, sdLitres: null, estimatedShare: 0, reason: { code, details: {} } }
    : { litres: gallons(value), sdLitres: gallons(value) * 0.03, estimatedShare: 0, reason: null };

const PRICE_PER_GAL = 0.00565;

function gap(high: number | null | undefined, low: number | null | undefined) {
  if (typeof high !== 'number' || typeof low !== 'number')
    return {
      litres: null,
      sdLitres: null,
      within: null,
      money: null,
      reason: { code: 'volume-absent', details: { volumes: [] } },
      estimate: null,
      inputs: [],
    };
  const value = high - low;
  return {
    litres: gallons(value),
    sdLitres: gallons(3000),
    within: Math.abs(value) < 4000,
    money: value * PRICE_PER_GAL,
    reason: null,
    estimate: null,
    inputs: [],
  };
}

/** A month account of these gallons; a volume that is null has a reason. A gap under 4,000 gal is within what can be measured. */
export function builtAccount(id: string, { allowed, needed, programmed, metered }: Volumes, given: Given = {}) {
  return {
    id,
    propertyId: 'p1',
    meterId: null,
    month: '2026-09',
    through: '2026-09-24',
    daysCovered: 24,
    daysInMonth: 30,
    allowed: volume(allowed, 'no-allowance'),
    needed: volume(needed, 'no-zones'),
    programmed: volume(programmed, 'settings-not-known'),
    metered: volume(metered, 'readings-missing'),
    landscapeGap: gap(needed, allowed),
    settingsGap: gap(programmed, needed),
    unexplainedGap: gap(metered, programmed),
    aboveNeed: gap(metered, needed),
    aboveAllowed: gap(metered, allowed),
    overLitres: typeof programmed === 'number' && typeof needed === 'number' ? gallons(programmed - needed + 1000) : null,
    underLitres: typeof programmed === 'number' && typeof needed === 'number' ? gallons(1000) : null,
    zones: [],
    notes: [],
    etoMm: 110,
    rainMm: 8,
    pricePerLitre: PRICE_PER_GAL / L_PER_GAL,
    inputsVersion: 'v1',
    computedAt: '2026-09-25T14:40:00Z',
    meterAccounts: [],
    ...given,
  };
}

export const builtClient = (id: string, name: string) => ({ id, version: 1, name, emails: [], properties: [] });

export function builtProperty(id: string, name: string, given: Given = {}) {
  return {
    id,
    version: 1,
    retiredAt: null,
    name,
    client: builtClient(`client-${id}`, `${name} HOA`),
    address: '14 Larch Way',
    city: 'Fennel Hollow',
    latitude: null,
    longitude: null,
    timeZone: 'America/Los_Angeles',
    meters: [],
    controllers: [],
    zones: [],
    backflowAssemblies: [],
    ordinanceYear: null,
    accounts: [],
    account: null,
    findings: [],
    workOrders: [],
    visits: [],
    changes: [],
    ...given,
  };
}

export function builtFinding(id: string, kind: string, given: Given = {}) {
  return {
    id,
    version: 1,
    property: builtProperty('p1', 'Quail Commons'),
    meterId: null,
    controllerId: null,
    zoneId: null,
    kind,
    state: 'open',
    fromOn: '2026-09-01',
    untilOn: '2026-09-24',
    litres: gallons(57_900),
    money: 327,
    confidence: 0.97,
    says: { code: kind, details: {} },
    evidence: {},
    openedAt: '2026-09-07T15:00:00Z',
    cameBack: 0,
    clearedAt: null,
    history: [],
    isSilenced: false,
    acknowledgedAt: null,
    acknowledgedBy: null,
    acknowledgedNote: null,
    acknowledgedUntil: null,
    photos: [],
    usageStrip: null,
    workOrders: [],
    ...given,
  };
}

export function builtWorkOrder(id: string, kind: string, given: Given = {}) {
  return {
    id,
    version: 1,
    property: builtProperty('p1', 'Quail Commons'),
    finding: null,
    overtakenBy: null,
    kind,
    state: 'open',
    what: 'Adjust the controller',
    skills: [],
    parts: [],
    isOffer: false,
    crew: null,
    day: null,
    createdAt: '2026-09-20T15:00:00Z',
    ...given,
  };
}

export const builtCrew = (id: string, name: string, given: Given = {}) => ({
  id,
  version: 1,
  retiredAt: null,
  name,
  members: [],
  skills: [],
  startLatitude: null,
  startLongitude: null,
  workingDays: [1, 2, 3, 4, 5],
  dayStartsMinute: 420,
  dayEndsMinute: 930,
  breakMinutes: 30,
  ...given,
});
