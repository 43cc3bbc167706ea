import { sameSettings } from '@rillbook/irrigation/settings/settings-differences.js';
import type { SettingsFact } from '@rillbook/irrigation/settings/settings-fact.js';
import { Temporal } from 'temporal-polyfill';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { newestSettings, newestSettingsKey } from '../../settings/facts/newest-settings.loader.js';
import { presentAndPlanned } from '../../settings/facts/present-and-planned.loader.js';
import { programFromKept } from '../../settings/program-from-kept.service.js';

/** Facts looked at, the newest first: more than a crew records of one controller in a season. */
const MOST_FACTS = 60;

type PresentAndPlanned = Awaited<ReturnType<ReturnType<(typeof presentAndPlanned)['of']>['load']>>;

/** A fact as its table has it. */
export type KeptSettings = NonNullable<PresentAndPlanned['present']>;

const asFact = ({ effectiveAt, record, state, programs }: KeptSettings): SettingsFact => ({
  effectiveAt: effectiveAt.toISOString(),
  record,
  state,
  programs: programs.map(programFromKept),
});

/**
 * What the controller is set to now, if it was set so since a day began, as far as is on record: only then does what an account of
 * these days says of its programs hold for the present settings.
 */
export async function settingsThroughout(
  tx: OrganizationTransaction,
  controllerId: string,
  sinceDay: string,
  timeZone: string,
): Promise<KeptSettings | null> {
  const { present } = await presentAndPlanned.of(tx).load(controllerId);
  if (!present || present.state !== 'on') return null;
  const since = Temporal.PlainDate.from(sinceDay).toZonedDateTime(timeZone).epochMilliseconds;
  const replayed = (await newestSettings.of(tx).load(newestSettingsKey(controllerId, MOST_FACTS))).filter(
    (fact) => fact.record !== 'planned' && fact.effectiveAt <= present.effectiveAt,
  );
  const inForceAt = replayed.findIndex((fact) => fact.effectiveAt.getTime() <= since);
  const relevant = inForceAt < 0 ? replayed : replayed.slice(0, inForceAt + 1);
  return relevant.every((fact) => sameSettings(asFact(present), asFact(fact))) ? present : null;
}
