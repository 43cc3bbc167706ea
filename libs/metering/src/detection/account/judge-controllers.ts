import type { ControllerLine, Gap, MonthAccount, ZoneLine } from '../../account/month-account.js';
import { excessFamily } from '../cause.js';
import type { FindingCandidate } from '../finding-candidate.js';
import type { JudgeInput } from './judge-input.js';
import { worthALook, type Worthy } from '../thresholds.js';

type Side = 'over-programmed' | 'under-programmed';

/**
 * Over-programmed and under-programmed: controllers whose settings put out more, or less, than their zones need.
 *
 * Over and under are judged apart, each over the zones that make it, so that a drowned zone never hides a thirsty one.
 *
 * @param input - The account, thresholds and prices. [code]
 * @returns At most one candidate of either kind for each controller. [code]
 */
export function judgeControllers(input: JudgeInput): readonly FindingCandidate[] {
  return input.account.controllers.flatMap((line) => [
    ...candidate(input, line, 'over-programmed', line.over, line.overZoneIds),
    ...candidate(input, line, 'under-programmed', line.under, line.underZoneIds),
  ]);
}

function candidate(input: JudgeInput, line: ControllerLine, kind: Side, gap: Gap, zoneIds: readonly string[]): readonly FindingCandidate[] {
  const { account } = input;
  const meterId = line.meterIds.length === 1 ? (line.meterIds[0] ?? null) : null;
  const worthy = weigh(input, kind, gap, meterId);
  if (!worthy || account.throughDate === null) return [];
  const zones = zonesOf(account, zoneIds);
  const causeKey = `${kind} controller:${line.controllerId}`;
  return [
    {
      kind,
      causeKey,
      causeFamily: kind === 'over-programmed' && meterId !== null ? excessFamily(meterId) : causeKey,
      meterId,
      controllerId: line.controllerId,
      zoneIds,
      fromDate: account.firstDate,
      untilDate: account.throughDate,
      ...worthy,
      evidence: { zones: zones.map(evidenceOfZone), inputs: gap.inputs },
      says: {
        code: kind,
        details: { controllerId: line.controllerId, zoneIds, programs: programsOf(zones), percentOfNow: percentOfNow(zones) },
      },
    },
  ];
}

// Watering more costs money: a zone that gets too little is judged by litres alone.
function weigh(input: JudgeInput, kind: Side, gap: Gap, meterId: string | null): Worthy | null {
  if (gap.litres === null || gap.sdLitres === null) return null;
  const pricePerLitre = kind === 'over-programmed' && meterId !== null ? (input.pricePerLitre.get(meterId) ?? null) : null;
  return worthALook({ litres: gap.litres, sdLitres: gap.sdLitres, pricePerLitre }, input.thresholds);
}

function zonesOf({ zones }: MonthAccount, zoneIds: readonly string[]): readonly ZoneLine[] {
  const wanted = new Set(zoneIds);
  return zones.filter(({ zoneId }) => wanted.has(zoneId));
}

function evidenceOfZone(zone: ZoneLine) {
  const { zoneId, station, programs, neededLitres, programmedLitres, overLitres, underLitres, gapSdLitres, runs, minutes } = zone;
  return { zoneId, station, programs, neededLitres, programmedLitres, overLitres, underLitres, gapSdLitres, runs, minutes };
}

function programsOf(zones: readonly ZoneLine[]): readonly string[] {
  const named = new Set<string>();
  for (const { programs } of zones) for (const program of programs) named.add(program);
  return [...named].sort();
}

// What these zones' minutes would have to be multiplied with; null where nothing runs that could be lengthened.
function percentOfNow(zones: readonly ZoneLine[]): number | null {
  const needed = zones.reduce((sum, zone) => sum + (zone.neededLitres ?? 0), 0);
  const programmed = zones.reduce((sum, zone) => sum + (zone.programmedLitres ?? 0), 0);
  return programmed > 0 ? Math.round((100 * needed) / programmed) : null;
}
