import { dateOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import { notesOfZones } from '../account/account-notes.js';
import type { ControllerLine, Gap, MonthAccount, Volume, Volumes, ZoneLine } from '../account/month-account.js';
import { absentGap } from '../account/volumes-of-scope.js';
import type { InputShare } from '../uncertainty/input-share.js';
import type { InputName } from '../uncertainty/uncertain-input.js';
import { absence } from '../volumes/absence.js';
import {
  type AccountColumns,
  type AccountFrame,
  columnPlaces,
  GAP_CAUSES,
  GAP_NUMBERS,
  OTHER_INPUTS,
  ZONE_INPUTS,
} from './account-columns.js';

/** How many of the inputs that are no zone's are the weather's; the others are the meter's. */
const WEATHER_INPUTS = 3;

/**
 * The month account that columns hold, as objects.
 *
 * @param columns - The account in columns. [L]
 * @returns The account: what `accountOfMonth` gives of the same month. [L]
 */
export function accountOfColumns(columns: AccountColumns): MonthAccount {
  const { frame, firstDay, days, meteredThrough } = columns;
  const property = volumesOf(columns);
  return {
    month: columns.month,
    firstDate: dateOfDayNumber(firstDay),
    throughDate: dateOfDayNumber(firstDay + days - 1),
    daysCovered: days,
    daysInMonth: columns.daysInMonth,
    property,
    meters: [{ ...property, meterId: frame.meterId, meteredThrough }],
    controllers: frame.controllerIds.map((id, place) => controllerLine(columns, id, place)),
    zones: zoneLines(columns),
    notes: [...columns.notes, ...zoneNotes(frame)],
  };
}

/** Of the zones that many months have in common. */
const notesOfFrames = new WeakMap<AccountFrame, ReturnType<typeof notesOfZones>>();

function zoneNotes(frame: AccountFrame): ReturnType<typeof notesOfZones> {
  const notes = notesOfFrames.get(frame) ?? notesOfZones(frame.zones);
  notesOfFrames.set(frame, notes);
  return notes;
}

function volumesOf(columns: AccountColumns): Volumes {
  const { numbers, notAllowed } = columns;
  const volume = (at: number): Volume => ({
    litres: numbers[at] as number,
    sdLitres: numbers[at + 1] as number,
    estimatedShare: numbers[at + 2] as number,
    reason: null,
  });
  const withoutAllowed = notAllowed && absentGap(absence('volume-absent', { volumes: ['allowed'], reasons: [notAllowed.code] }));
  const { over, under } = columnPlaces(columns.frame.zones.length, columns.frame.controllerIds.length);
  return {
    allowed: notAllowed ? { litres: null, sdLitres: null, estimatedShare: 0, reason: notAllowed } : volume(0),
    needed: volume(3),
    programmed: volume(6),
    metered: volume(9),
    landscapeGap: withoutAllowed ?? gapOf(columns, 0),
    settingsGap: { ...gapOf(columns, 1), overLitres: numbers[over] as number, underLitres: numbers[under] as number },
    unexplainedGap: gapOf(columns, 2),
    meteredOverNeeded: gapOf(columns, 3),
    meteredOverAllowed: withoutAllowed ?? gapOf(columns, 4),
  };
}

function gapOf(columns: AccountColumns, nth: number): Gap {
  const { frame, numbers, causes } = columns;
  const at = columnPlaces(frame.zones.length, frame.controllerIds.length).gaps + GAP_NUMBERS * nth;
  const inputs: InputShare[] = [];
  for (let rank = 0; rank < GAP_CAUSES; rank += 1) {
    const place = causes[GAP_CAUSES * nth + rank] as number;
    if (place >= 0) inputs.push(inputAt(columns, place, numbers[at + 2 + rank] as number));
  }
  return { litres: numbers[at] as number, sdLitres: numbers[at + 1] as number, reason: null, estimate: null, inputs };
}

function inputAt({ frame }: AccountColumns, place: number, varianceShare: number): InputShare {
  const zone = frame.zones[Math.floor(place / ZONE_INPUTS.length)];
  if (!zone) {
    const other = place - ZONE_INPUTS.length * frame.zones.length;
    const controllerId = frame.controllerIds[other - OTHER_INPUTS.length];
    if (controllerId !== undefined) return { input: 'filledSettings', subjectId: controllerId, varianceShare };
    return { input: OTHER_INPUTS[other] as InputName, subjectId: other < WEATHER_INPUTS ? null : frame.meterId, varianceShare };
  }
  const input = ZONE_INPUTS[place % ZONE_INPUTS.length] as (typeof ZONE_INPUTS)[number];
  return { input: input === 'flow' && zone.isDerived ? 'precipitationRate' : input, subjectId: zone.id, varianceShare };
}

function controllerLine(columns: AccountColumns, controllerId: string, place: number): ControllerLine {
  const { frame, numbers } = columns;
  const { programmed, needed } = columnPlaces(frame.zones.length, frame.controllerIds.length);
  const [overZoneIds, underZoneIds]: [string[], string[]] = [[], []];
  let hasZones = false;
  frame.zones.forEach((zone, at) => {
    if (zone.controllerId !== controllerId) return;
    const litres = (numbers[programmed + at] as number) - (numbers[needed + at] as number);
    if (litres > 0) overZoneIds.push(zone.id);
    if (litres < 0) underZoneIds.push(zone.id);
    hasZones = true;
  });
  const nothing = () => absentGap(absence('volume-absent', { volumes: ['programmed'], zones: [] }));
  const gap = (side: number) => (hasZones ? gapOf(columns, 5 + 2 * place + side) : nothing());
  return { controllerId, meterIds: hasZones ? [frame.meterId] : [], over: gap(0), under: gap(1), overZoneIds, underZoneIds };
}

function zoneLines({ frame, numbers, programSets, programSet }: AccountColumns): readonly ZoneLine[] {
  const places = columnPlaces(frame.zones.length, frame.controllerIds.length);
  return frame.zones.map(({ id, controllerId, station }, zone) => {
    const [needed, programmed] = [numbers[places.needed + zone] as number, numbers[places.programmed + zone] as number];
    return {
      zoneId: id,
      scope: 'metered',
      meterId: frame.meterId,
      controllerId,
      station,
      programs: programSets[programSet[zone] as number] as readonly string[],
      neededLitres: needed,
      neededSdLitres: numbers[places.neededSd + zone] as number,
      programmedLitres: programmed,
      programmedSdLitres: numbers[places.programmedSd + zone] as number,
      overLitres: Math.max(0, programmed - needed),
      underLitres: Math.max(0, needed - programmed),
      gapSdLitres: numbers[places.gapSd + zone] as number,
      runs: numbers[places.runs + zone] as number,
      minutes: numbers[places.minutes + zone] as number,
      estimatedShare: numbers[places.estimatedShare + zone] as number,
      estimate: null,
      reason: null,
    };
  });
}
