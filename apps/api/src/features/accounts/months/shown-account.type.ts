import type { AccountNote, Gap as AccountGap, Volume as AccountVolume } from '@rillbook/metering/account/month-account.js';
import type { InputShare } from '@rillbook/metering/uncertainty/input-share.js';
import { probabilityAboveZero } from '@rillbook/metering/uncertainty/normal-probability.js';
import type { MonthAccountRow } from './month-account.entity.js';
import { Gap, MonthAccount, UncertaintyShare, Volume, ZoneAccount } from './month-account.type.js';

const volume = (from: AccountVolume): Volume => Object.assign(new Volume(), from);

/** A gap is within what can be measured when its sign is less sure than the organization asks. */
function gap(from: AccountGap, pricePerLitre: number | null, leastConfidence: number): Gap {
  const { litres, sdLitres, reason } = from;
  const within =
    litres === null || sdLitres === null ? null : sdLitres > 0 && probabilityAboveZero(Math.abs(litres), sdLitres) < leastConfidence;
  return Object.assign(new Gap(), {
    litres,
    sdLitres,
    within,
    money: litres === null || pricePerLitre === null ? null : litres * pricePerLitre,
    reason,
  });
}

/** Inputs of the same sort are one line: what a crew would measure. */
function shares(inputs: readonly InputShare[]): UncertaintyShare[] {
  const byInput = new Map<string, number>();
  for (const { input, varianceShare } of inputs) byInput.set(input, (byInput.get(input) ?? 0) + varianceShare);
  return [...byInput]
    .sort((a, b) => b[1] - a[1])
    .slice(0, 5)
    .map(([input, share]) => Object.assign(new UncertaintyShare(), { input, share }));
}

/** An account's row as the screens see it. */
export function showMonthAccount(row: MonthAccountRow, leastConfidence: number): MonthAccount {
  const { account, pricePerLitre, etoMm, rainMm } = row.detail;
  const { property } = account;
  const show = (from: AccountGap): Gap => gap(from, pricePerLitre, leastConfidence);
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
    uncertainty: shares(property.meteredOverNeeded.inputs),
    notes: account.notes.map((note: AccountNote) => ({ code: note.code, details: note.details })),
    etoMm,
    rainMm,
    pricePerLitre,
    inputsVersion: row.inputsVersion,
    computedAt: row.computedAt,
  });
}
