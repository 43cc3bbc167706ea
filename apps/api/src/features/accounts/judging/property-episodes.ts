import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import type { WateringRule } from '@rillbook/irrigation/rules/watering-rule.js';
import type { Episode } from '@rillbook/metering/detection/evidence/episode.js';
import { judgeMeter } from '@rillbook/metering/detection/episodes/judge-meter.js';
import type { JudgedMonth } from '@rillbook/metering/detection/episodes/judged-month.js';
import { monthEpisodes } from '@rillbook/metering/detection/episodes/month-episodes.js';
import { settleEpisodes } from '@rillbook/metering/detection/episodes/settle-episodes.js';
import { stoodRightly } from '@rillbook/metering/detection/readings/rightly-still.js';
import type { Thresholds } from '@rillbook/metering/detection/thresholds.js';
import type { NewestFacts } from '../accounts-computed.event.js';
import { type EvidenceSources, propertyEvidence } from '../evidence/property-evidence.js';
import type { PropertyReplays } from '../evidence/property-replays.js';
import type { ReadMeter } from '../gather/metered-intervals.js';
import { needsMixed } from './needs-mixed.js';
import { withProjection } from './projected-allowance.js';
import { readingFindings } from './reading-findings.js';
import { rulesBroken } from './rules-broken.js';
import { withSeasons } from './season-causes.js';
import { silence } from './silence.js';

/** What a property is judged by, besides what is on record of it. */
export interface Judging {
  readonly thresholds: Thresholds;
  readonly rules: readonly WateringRule[];
  /** the organization's local date */
  readonly today: string;
}

/** A property and its months as they stand. */
export interface JudgedProperty extends EvidenceSources {
  readonly read: readonly ReadMeter[];
  readonly newest: NewestFacts;
  /** oldest first */
  readonly months: readonly JudgedMonth[];
  /** from the first day of the first month to today, which is there for what was read today */
  readonly replays: () => PropertyReplays;
}

/** Everything that is found of a property through time, as somebody who saw each fact when it came would have told it: one episode for a cause. */
export function propertyEpisodes(property: JudgedProperty, { thresholds, rules, today }: Judging): readonly Episode[] {
  const first = property.months[0];
  const ofReadings = property.read.flatMap(readingFindings);
  if (!first) return settleEpisodes(ofReadings);
  const [firstDate, day] = [`${first.month}-01`, dayNumberOfDate(today)];
  const evidence = propertyEvidence(property, property.replays());
  const ofMeters = evidence.meters.flatMap((meter) => judgeMeter(meter, thresholds)).map((episode) => asKnown(episode, property.read));
  const measured = settleEpisodes([...ofMeters, ...ofReadings.filter((episode) => !stoodRightly(episode, evidence.meters))]);
  const found = withSeasons(monthEpisodes(property.months, measured, thresholds), property.facts, evidence, day);
  const ofMonths = withProjection(found, evidence);
  const weather = { eto: property.eto, today: day, pricePerLitre: property.pricePerLitre };
  return settleEpisodes([
    ...measured,
    ...ofMonths,
    ...rulesBroken(property.facts, rules, property.eto, day),
    ...needsMixed(property.facts, evidence.zones, weather, thresholds),
    ...silence(property.newest, firstDate, today),
  ]);
}

/** A volume up to a reading that was doubted is known when the next reading shows that it was right. */
function asKnown(episode: Episode, read: readonly ReadMeter[]): Episode {
  const believed = read.flatMap(({ judged }) => judged).find((one) => one.isRight === true && one.localDay === episode.openedLocalDay);
  return believed?.settledLocalDay ? { ...episode, openedLocalDay: believed.settledLocalDay } : episode;
}
