import type { MonthAccount, Volumes } from '@rillbook/metering/account/month-account.js';
import type { AccountDetail } from '../months/month-account.entity.js';
import type { NewAccount } from '../months/month-account.repository.js';
import { packed } from '../months/packed-value.js';

/** What the rows of one month have in common. */
export interface AccountFrame {
  readonly propertyId: string;
  readonly version: string;
  readonly pricePerLitre: number | null;
  readonly etoMm: number | null;
  readonly rainMm: number | null;
}

function row(frame: AccountFrame, account: MonthAccount, volumes: Volumes, meterId: string | null, detail: AccountDetail): NewAccount {
  const above = volumes.meteredOverNeeded.litres;
  return {
    propertyId: frame.propertyId,
    meterId,
    month: account.firstDate,
    throughOn: account.throughDate ?? account.firstDate,
    allowedL: volumes.allowed.litres,
    allowedSdL: volumes.allowed.sdLitres,
    neededL: volumes.needed.litres,
    neededSdL: volumes.needed.sdLitres,
    programmedL: volumes.programmed.litres,
    programmedSdL: volumes.programmed.sdLitres,
    meteredL: volumes.metered.litres,
    meteredSdL: volumes.metered.sdLitres,
    overL: volumes.settingsGap.overLitres,
    underL: volumes.settingsGap.underLitres,
    aboveNeedL: above,
    aboveNeedSdL: volumes.meteredOverNeeded.sdLitres,
    aboveNeedMoney: above === null || frame.pricePerLitre === null ? null : above * frame.pricePerLitre,
    detail: packed(detail),
    inputsVersion: frame.version,
  };
}

/** The rows of a month: the property's, and one for each meter where it has several. */
export function accountRows(frame: AccountFrame, account: MonthAccount): NewAccount[] {
  const detail: AccountDetail = { account, pricePerLitre: frame.pricePerLitre, etoMm: frame.etoMm, rainMm: frame.rainMm };
  const property = row(frame, account, account.property, null, detail);
  if (account.meters.length < 2) return [property];
  // The whole account stands in the property's row; a meter's row keeps its own part.
  return [
    property,
    ...account.meters.map((meter) =>
      row(frame, account, meter, meter.meterId, {
        ...detail,
        account: {
          ...account,
          property: meter,
          meters: [],
          controllers: [],
          zones: account.zones.filter((zone) => zone.meterId === meter.meterId),
          notes: [],
        },
      }),
    ),
  ];
}
