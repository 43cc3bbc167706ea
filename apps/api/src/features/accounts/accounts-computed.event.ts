import type { MonthAccount } from '@rillbook/metering/account/month-account.js';
import type { Episode } from '@rillbook/metering/detection/evidence/episode.js';
import type { JudgedMonth } from '@rillbook/metering/detection/episodes/judged-month.js';

/** One month of a property as it was just computed, or as it stands. */
export interface ComputedMonth {
  readonly month: string;
  readonly account: MonthAccount;
  readonly pricePerLitre: number | null;
  /** what it says of settings, allowance and sources */
  readonly judged: JudgedMonth;
}

/** The accounts of some properties are up to date; told in the same transaction. */
export class PropertiesComputed {
  constructor(readonly properties: readonly AccountsComputed[]) {}
}

/** The accounts of one property as they are up to date. */
export class AccountsComputed {
  constructor(
    readonly propertyId: string,
    /** by which local days become instants */
    readonly timeZone: string,
    /** everything that is found of it through time, one episode for a cause */
    readonly episodes: readonly Episode[],
    /** dates of the newest facts, null where there is none */
    readonly newest: NewestFacts,
  ) {}
}

/** When something was last known of a property. */
export interface NewestFacts {
  /** of each meter */
  readonly readings: readonly { readonly meterId: string; readonly on: string | null }[];
  /** of each controller */
  readonly settings: readonly { readonly controllerId: string; readonly on: string | null; readonly known: boolean }[];
  /** the newest input of any sort: the time at which a finding could first be opened */
  readonly at: Date;
}
