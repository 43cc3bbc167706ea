import { aProperty, type Built, insertRow } from '../../support/builders.js';
import type { TestDatabase } from '../../support/test-database.js';

const SEASON = [0.1, 0.15, 0.35, 0.6, 0.9, 1.1, 1.2, 1.1, 0.8, 0.45, 0.18, 0.08];
const FIRST = 2024 * 12;

/** How an invented property took water; the same seed, the same numbers. */
export interface Taken {
  readonly months: number;
  readonly seed: number;
  readonly pricePerLitre?: number | null;
  /** place of a month whose meter is not known */
  readonly without?: number;
}

const none = { reason: null, estimate: null, inputs: [] };

function randomOf(seed: number): () => number {
  let state = seed * 2_654_435_761;
  return () => {
    state = (state * 16_807 + 11) % 2_147_483_647;
    return Math.abs(state) / 2_147_483_647;
  };
}

/** A property with month accounts as they are kept, from January 2024 on: invented, not computed. */
export async function anAccountedProperty(database: TestDatabase, organizationId: string, columns: object, taken: Taken): Promise<Built> {
  const property = await aProperty(database, organizationId, { ...columns });
  const random = randomOf(taken.seed + 1);
  const size = 50_000 + 2_000_000 * random();
  for (let at = 0; at < taken.months; at += 1) {
    const needed = size * SEASON[at % 12]! * (0.9 + 0.2 * random());
    const litres = {
      allowed: needed * (0.8 + 0.4 * random()),
      needed,
      programmed: needed * (1.1 + 0.3 * random()),
      metered: at === taken.without ? null : needed * (1.1 + 0.4 * random()),
    };
    await anAccount(database, property, FIRST + at, litres, taken.pricePerLitre === undefined ? 0.0015 : taken.pricePerLitre);
  }
  return property;
}

type Litres = Readonly<Record<'allowed' | 'needed' | 'programmed' | 'metered', number | null>>;

function detailOf(month: string, days: number, litres: Litres, pricePerLitre: number | null): object {
  const volume = (value: number | null) => ({
    litres: value,
    sdLitres: value === null ? null : value * 0.05,
    estimatedShare: 0,
    reason: value === null ? { code: 'readings-missing', details: {} } : null,
  });
  const gap = (high: number | null, low: number | null) => ({
    ...none,
    litres: high === null || low === null ? null : high - low,
    sdLitres: high === null || low === null ? null : high * 0.05,
  });
  const { allowed, needed, programmed, metered } = litres;
  const property = {
    allowed: volume(allowed),
    needed: volume(needed),
    programmed: volume(programmed),
    metered: volume(metered),
    landscapeGap: gap(needed, allowed),
    settingsGap: { ...gap(programmed, needed), overLitres: null, underLitres: null },
    unexplainedGap: gap(metered, programmed),
    meteredOverNeeded: gap(metered, needed),
    meteredOverAllowed: gap(metered, allowed),
  };
  const through = `${month}-${days}`;
  const account = {
    month,
    firstDate: `${month}-01`,
    throughDate: through,
    daysCovered: days,
    daysInMonth: days,
    property,
    meters: [],
    controllers: [],
    zones: [],
    notes: [],
  };
  return { account, pricePerLitre, etoMm: 100 + days, rainMm: days / 3 };
}

/** The account of a whole month, as its number since year 0; the landscape's gap has an uncertainty of 5 % of the need. */
export async function anAccount(
  database: TestDatabase,
  property: Built,
  at: number,
  litres: Litres,
  pricePerLitre: number | null,
): Promise<void> {
  const month = `${Math.floor(at / 12)}-${String((at % 12) + 1).padStart(2, '0')}`;
  const days = new Date(Date.UTC(Math.floor(at / 12), (at % 12) + 1, 0)).getUTCDate();
  await insertRow(database, 'month_account', {
    organization_id: property.organization_id,
    property_id: property.id,
    month: `${month}-01`,
    through_on: `${month}-${days}`,
    allowed_l: litres.allowed,
    needed_l: litres.needed,
    metered_l: litres.metered,
    detail: Buffer.from(JSON.stringify(detailOf(month, days, litres, pricePerLitre))),
    inputs_version: `invented ${month}`,
  });
}
