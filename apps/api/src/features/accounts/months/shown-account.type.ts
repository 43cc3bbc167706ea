import type { AccountNote, Gap as AccountGap, Volume as AccountVolume } from '@rillbook/metering/account/month-account.js';
import { probabilityAboveZero } from '@rillbook/metering/uncertainty/normal-probability.js';
import type { MonthAccountRow } from './month-account.entity.js';
import { Gap, MonthAccount, UncertaintyShare, Volume, ZoneAccount } from './month-account.type.js';

const volume = (from: AccountVolume): Volume => Object.assign(new Volume(), from);

/** What all gaps of an account are shown with. */
interface Shown {
  readonly propertyId: string;
  readonly pricePerLitre: number | null;
  readonly leastConfidence: number;
}

/** A gap is within what can be measured when its sign is less sure than the organization asks. */
function gap(from: AccountGap, { propertyId, pricePerLitre, leastConfidence }: Shown): Gap {
  const { litres, sdLitres, reason, estimate } = from;
  const within =
    litres === null || sdLitres === null ? null : sdLitres > 0 && probabilityAboveZero(Math.abs(litres), sdLitres) < leastConfidence;
  return Object.assign(new Gap(), {
    litres,
    sdLitres,
    within,
    money: litres === null || pricePerLitre === null ? null : litres * pricePerLitre,
    reason,
    estimate,
    inputs: from.inputs.map(({ input, subjectId, varianceShare }) =>
      Object.assign(new UncertaintyShare(), { input, subjectId, share: varianceShare, propertyId }),
    ),
  });
}

/** An account's row as the screens see it. */
export function showMonthAccount(row: MonthAccountRow, leastConfidence: number): MonthAccount {
  const { account, pricePerLitre, etoMm, rainMm } = row.detail;
  const { property } = account;
  const show = (from: AccountGap): Gap => gap(from, { propertyId: row.propertyId, pricePerLitre, leastConfidence });
  return Object.assign(new MonthAccount(), {
    id: row.id,
    propertyId: row.propertyId,
    meterId: row.meterId,
    month: row.month.slice(0, 7),
    through: row.throughOn,
    daysCovered: account.daysCovered,
    daysInMonth: account.daysInMonth,
    allowed: volume(property.allowed),
    needed: volume(property.needed),
    programmed: volume(property.programmed),
    metered: volume(property.metered),
    landscapeGap: show(property.landscapeGap),
    settingsGap: show(property.settingsGap),
    unexplainedGap: show(property.unexplainedGap),
    aboveNeed: show(property.meteredOverNeeded),
    aboveAllowed: show(property.meteredOverAllowed),
    overLitres: row.overL,
    underLitres: row.underL,
    zones: account.zones.map((line) => Object.assign(new ZoneAccount(), line)),
    notes: account.notes.map((note: AccountNote) => ({ code: note.code, details: note.details })),
    etoMm,
    rainMm,
    pricePerLitre,
    inputsVersion: row.inputsVersion,
    computedAt: row.computedAt,
  });
}
