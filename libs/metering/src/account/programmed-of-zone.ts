import type { ControllerReplay } from '@rillbook/irrigation/settings/replay-controller.js';
import { DomainError } from '@rillbook/units/domain-error.js';
import { defaultRelativeSd } from '../uncertainty/default-relative-sd.js';
import { inputKey } from '../uncertainty/input-share.js';
import { type Absence, absence } from '../volumes/absence.js';
import { absent, type Figure, known } from '../volumes/figure.js';
import { fillMissingDays } from '../volumes/fill-missing-days.js';
import type { AccountZone } from './account-input.js';
import type { CoveredMonth } from './covered-month.js';
import { areaSd, type NeededOfZone } from './needed-of-zone.js';

/** What the settings put out in one zone: the volume, and runs, minutes and programs of the days that are known. */
export interface ProgrammedOfZone {
  readonly figure: Figure;
  readonly runs: number | null;
  readonly minutes: number | null;
  readonly programs: readonly string[];
}

const NEITHER = { runs: null, minutes: null, programs: [] } as const;

/**
 * What the replayed settings would have put out in one zone, with what each uncertain input does to it; a zone watered by hand as told.
 *
 * @param zone - The zone. [code]
 * @param month - The covered days and their ET weights. [mm]
 * @param replay - The replay of the zone's controller over the covered days, or null where it has none. [min]
 * @param needed - The zone's need, to fill unknown days by. [L]
 * @returns The volume, runs, minutes and programs. [L] and [min]
 * @throws {DomainError} `ZONE_FLOW_OUT_OF_DOMAIN` when a flow or a volume by hand is below zero or not finite.
 */
export function programmedOfZone(
  zone: AccountZone,
  month: CoveredMonth,
  replay: ControllerReplay | null,
  needed: NeededOfZone,
): ProgrammedOfZone {
  if (zone.handWatered) return { figure: byHand(zone, month.days), ...NEITHER };
  if (!replay || zone.station === null) return { figure: absent(absence('no-controller', { zones: [zone.id] })), ...NEITHER };
  const station = replay.stations.get(zone.station);
  const minutes = replay.unknown.map((reason, day) => (reason === null ? (station?.minutes[day] ?? 0) : null));
  const filled = fillMissingDays(
    minutes.map((each, day) => ({
      litres: each ?? 0,
      knownShare: each === null ? 0 : 1,
      etWeight: month.etWeights[day] ?? 1,
      neededLitres: needed.byDay?.[day] ?? null,
    })),
  );
  if (filled.litres === null) return { figure: absent(unknownSettings(replay, filled.missingShare, zone)), ...NEITHER };
  const sum = (values: readonly (number | null)[]) => values.reduce<number>((total, value) => total + (value ?? 0), 0);
  const facts = { runs: sum(station?.runs ?? []), minutes: sum(minutes), programs: station?.programs ?? [] };
  return { figure: throughValve(zone, filled.litres, filled.filledLitres), ...facts };
}

function throughValve(zone: AccountZone, minutes: number, filledMinutes: number): Figure {
  const flow = zone.flowLPerMin;
  if (flow === null) return absent(absence('flow-not-known', { zones: [zone.id] }));
  if (!(flow >= 0 && Number.isFinite(flow))) throw new DomainError('ZONE_FLOW_OUT_OF_DOMAIN', { zoneId: zone.id, flowLPerMin: flow });
  const litres = minutes * flow;
  const source = zone.assumed.includes('flowLPerMin') && zone.flowSource !== 'derived' ? 'assumed' : zone.flowSource;
  const relative = defaultRelativeSd.flow[source];
  // A flow derived from precipitation rate and area errs with the area, which need and allowance share.
  const ofFlow: readonly (readonly [string, number])[] =
    source === 'derived'
      ? [
          [inputKey('precipitationRate', zone.id), litres * relative],
          [inputKey('area', zone.id), litres * areaSd(zone)],
        ]
      : [[inputKey('flow', zone.id), litres * relative]];
  const filled = [inputKey('filledSettings', zone.controllerId), filledMinutes * flow * defaultRelativeSd.filled] as const;
  return known({ litres, parts: new Map([...ofFlow, filled]) }, filledMinutes * flow);
}

function byHand(zone: AccountZone, days: number): Figure {
  const perWeek = zone.handLitresPerWeek;
  if (perWeek === null) return absent(absence('hand-volume-not-known', { zones: [zone.id] }));
  if (!(perWeek >= 0 && Number.isFinite(perWeek)))
    throw new DomainError('ZONE_FLOW_OUT_OF_DOMAIN', { zoneId: zone.id, handLitresPerWeek: perWeek });
  const litres = (perWeek * days) / 7;
  return known({ litres, parts: new Map([[inputKey('handVolume', zone.id), litres * defaultRelativeSd.handVolume]]) });
}

function unknownSettings(replay: ControllerReplay, missingShare: number, zone: AccountZone): Absence {
  const weather = replay.unknown.filter((reason) => reason === 'settings-from-weather').length;
  const notKnown = replay.unknown.filter((reason) => reason === 'settings-not-known').length;
  const code = weather > notKnown ? 'settings-from-weather' : 'settings-not-known';
  return absence(code, { zones: [zone.id], controllerId: zone.controllerId ?? '', missingShare });
}
