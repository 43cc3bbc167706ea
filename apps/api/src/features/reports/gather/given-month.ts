import type { Gap, Volume } from '@rillbook/metering/account/month-account.js';
import type { GivenGap, GivenMonth, GivenVolume } from '@rillbook/showing/report/report-input.js';
import type { accountsOfProperty } from '../../accounts/months/month-account.loader.js';

type Account = Awaited<ReturnType<ReturnType<typeof accountsOfProperty.of>['load']>>[number];

const volume = ({ litres, sdLitres, estimatedShare, reason }: Volume): GivenVolume => ({
  litres,
  sdLitres,
  estimatedShare,
  reason: reason?.code ?? null,
});

/** An account as a report takes it. */
export function givenMonth(row: Account): GivenMonth {
  const { account, pricePerLitre, etoMm, rainMm } = row.detail;
  const { property } = account;
  const gap = ({ litres, sdLitres }: Gap): GivenGap => ({
    litres,
    sdLitres,
    money: litres === null || pricePerLitre === null ? null : litres * pricePerLitre,
  });
  return {
    month: row.month.slice(0, 7),
    daysCovered: account.daysCovered,
    daysInMonth: account.daysInMonth,
    through: account.throughDate,
    allowed: volume(property.allowed),
    needed: volume(property.needed),
    programmed: volume(property.programmed),
    metered: volume(property.metered),
    landscapeGap: gap(property.landscapeGap),
    settingsGap: gap(property.settingsGap),
    unexplainedGap: gap(property.unexplainedGap),
    aboveNeed: gap(property.meteredOverNeeded),
    aboveAllowed: gap(property.meteredOverAllowed),
    etoMm,
    rainMm,
    zones: account.zones.map(({ zoneId, neededLitres, scope }) => ({
      zoneId,
      neededLitres,
      isCounted: scope === 'metered' || scope === 'unassigned',
    })),
  };
}
