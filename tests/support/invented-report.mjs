// Invented input of a water report: the same seed, the same report. For proofs; no database is asked.
const SEASON = [0.1, 0.15, 0.35, 0.6, 0.9, 1.1, 1.2, 1.1, 0.8, 0.45, 0.18, 0.08];
const FIRST = 2024 * 12;

/** @param {number} seed */
function randomOf(seed) {
  let state = (seed + 1) * 2_654_435_761;
  return () => {
    state = (state * 16_807 + 11) % 2_147_483_647;
    return Math.abs(state) / 2_147_483_647;
  };
}

const monthAt = (at) => `${Math.floor(at / 12)}-${String((at % 12) + 1).padStart(2, '0')}`;

function aMonth(at, size, random, isMissing) {
  const needed = size * SEASON[at % 12] * (0.9 + 0.2 * random());
  const litres = {
    allowed: needed * (0.8 + 0.4 * random()),
    needed,
    programmed: needed * (1.1 + 0.3 * random()),
    metered: isMissing ? null : needed * (0.95 + 0.5 * random()),
  };
  const volume = (value) => ({
    litres: value,
    sdLitres: value === null ? null : value * 0.05,
    estimatedShare: random() < 0.1 ? 0.08 : 0,
    reason: value === null ? 'readings-missing' : null,
  });
  const gap = (high, low) =>
    high === null || low === null
      ? { litres: null, sdLitres: null, money: null }
      : { litres: high - low, sdLitres: high * 0.05, money: (high - low) * 0.0015 };
  const { allowed, programmed, metered } = litres;
  const days = new Date(Date.UTC(Math.floor(at / 12), (at % 12) + 1, 0)).getUTCDate();
  return {
    month: monthAt(at),
    daysCovered: days,
    daysInMonth: days,
    through: `${monthAt(at)}-${days}`,
    allowed: volume(allowed),
    needed: volume(needed),
    programmed: volume(programmed),
    metered: volume(metered),
    landscapeGap: gap(needed, allowed),
    settingsGap: gap(programmed, needed),
    unexplainedGap: gap(metered, programmed),
    aboveNeed: gap(metered, needed),
    aboveAllowed: gap(metered, allowed),
    etoMm: 200 * SEASON[at % 12],
    rainMm: 60 * random(),
    zones: [
      { zoneId: 'lawn', neededLitres: needed * 0.6, isCounted: true },
      { zoneId: 'shrubs', neededLitres: needed * 0.4, isCounted: true },
    ],
  };
}

function aProperty(random, name) {
  const size = 50_000 + 2_000_000 * random();
  const months = Array.from({ length: 30 }, (_, at) => aMonth(FIRST + at, size, random, random() < 0.02));
  const amount = () => ({ litres: size * random() * 0.3, money: random() < 0.8 ? size * random() * 0.0004 : null });
  return {
    id: name,
    name,
    where: '12 Alder Street, Fennimore',
    months,
    firstWork: random() < 0.7 ? monthAt(FIRST + 14 + Math.floor(random() * 10)) : null,
    pricePerLitre: random() < 0.9 ? 0.0015 : null,
    findings: ['over-programmed', 'steady flow', 'mixed water needs', 'under-programmed']
      .filter(() => random() < 0.6)
      .map((kind, at) => ({
        id: `finding ${at}`,
        kind,
        state: at % 2 ? 'resolved' : 'open',
        zones: at % 3 ? ['Front lawn'] : [],
        fromOn: '2026-06-01',
        untilOn: '2026-06-20',
        ...amount(),
        isTooLittle: kind === 'under-programmed',
        resolvedWith: null,
      })),
    work: [
      {
        id: 'done',
        kind: 'repair',
        state: 'done',
        what: 'Valve of zone 4 replaced',
        doneOn: '2026-06-12',
        doneNote: 'diaphragm torn',
        cost: 180,
        photos: [],
      },
      {
        id: 'waits',
        kind: 'upgrade',
        state: 'waiting for approval',
        what: 'Drip for the shrubs along the street',
        doneOn: null,
        doneNote: null,
        cost: 2400,
        photos: [],
      },
    ],
    allowance: random() < 0.7 ? { from: 'ordinance', etaf: 0.45, specialLandscapeAreaM2: 90 } : null,
    zones: [
      { id: 'lawn', name: 'Front lawn', areaM2: 820, plantFactor: 0.8, plants: 'turf cool-season', method: 'spray' },
      { id: 'shrubs', name: 'Street shrubs', areaM2: 540, plantFactor: 0.4, plants: 'shrubs', method: 'drip' },
    ],
  };
}

/** The input of the report of a seed: language, units, period and number of properties follow from it. */
export function inventedReport(seed) {
  const random = randomOf(seed);
  const properties = Array.from({ length: seed % 7 === 0 ? 3 : 1 }, (_, at) => aProperty(random, `Alder Row ${at + 1}`));
  return {
    brand: { name: 'Meadow & Main Landscape', colour: seed % 3 ? '#2f5d3a' : null, logo: null, contact: 'office@meadow.example' },
    client: 'Alder Row Owners’ Association',
    period: { from: ['2026-06', '2026-04', '2025-07'][seed % 3], until: '2026-06' },
    language: seed % 2 ? 'es' : 'en',
    units: seed % 4 < 2 ? 'us' : 'metric',
    currency: 'USD',
    timeZone: 'America/Los_Angeles',
    confidence: 0.9,
    note: seed % 5 ? null : 'Thank you for letting us open the fence.',
    madeOn: '2026-07-04',
    dataVersion: `invented${seed}`,
    properties,
  };
}
