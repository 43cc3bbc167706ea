import type { RuleBreach } from '@rillbook/irrigation/rules/rule-breach.js';
import type { FindingCandidate } from '../finding-candidate.js';

/** Where a rule is broken: the controller, and the zone of each station. */
export interface RuledController {
  readonly controllerId: string;
  readonly zoneOfStation: ReadonlyMap<number, string>;
}

/**
 * Rules that a controller's settings break, as findings: one for each rule, whatever the programs and ways in which it is broken.
 *
 * @param controller - The controller and its zones. [code]
 * @param breaches - What `judgeRules` found. [code]
 * @returns One candidate for each rule; certain, since settings and rule are both on record. [code]
 */
export function ruleFindings(controller: RuledController, breaches: readonly RuleBreach[]): readonly FindingCandidate[] {
  const { controllerId, zoneOfStation } = controller;
  return [...new Set(breaches.map(({ rule }) => rule))].map((rule) => {
    const own = breaches.filter((breach) => breach.rule === rule);
    const stations = [...new Set(own.flatMap((breach) => breach.stations))].sort((a, b) => a - b);
    const key = `breaks a rule controller:${controllerId} ${rule}`;
    return {
      kind: 'breaks a rule',
      causeKey: key,
      causeFamily: key,
      meterId: null,
      controllerId,
      zoneIds: [...new Set(stations.flatMap((station) => zoneOfStation.get(station) ?? []))],
      fromDate: own.map(({ firstDate }) => firstDate).sort()[0] ?? '',
      untilDate:
        own
          .map(({ lastDate }) => lastDate)
          .sort()
          .at(-1) ?? '',
      litres: null,
      sdLitres: null,
      money: null,
      confidence: 1,
      evidence: { breaches: own, stations },
      says: { code: 'breaks a rule', details: { rule, controllerId, programs: [...new Set(own.map(({ program }) => program))].sort() } },
    };
  });
}
