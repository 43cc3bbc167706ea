import { dateOfDayNumber, dayNumberOfDate, weekdayOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import { restOfDay } from '@rillbook/routing/day/rest-of-day.js';
import type { CrewDay, PlanInput } from '@rillbook/routing/plan/plan-input.js';
import type { Position } from '@rillbook/routing/travel/great-circle-distance.js';
import type { TravelTable } from '@rillbook/routing/travel/travel-table.js';
import type { CrewRow } from '../../crews/crew.entity.js';
import type { CrewAndDay, PlanItem, PlanMaterial } from './plan-item.js';
import { minutesOf, stopOfItem } from './stop-of-item.js';

const MINUTE_S = 60;

/** More stops than a crew makes in a day. */
const MOST_STOPS = 60;

/** How much an even spread over crews and days is worth (see the library's plan input). */
const EVENNESS = 0.3;

/** What a day with stops costs by itself, as driving: loading, the way out of the yard. Few stops are put together rather than driven to one by one. Common practice. [s] */
const GOING_OUT_S = 1200;

/** Places in the order of the travel table, and where each property and crew's start stands in it. */
export interface Places {
  readonly positions: readonly Position[];
  readonly ofProperty: ReadonlyMap<string, number>;
  readonly ofCrew: ReadonlyMap<string, number>;
}

/** What is free to be planned; everything else that has a day stays there. */
export interface PlanWish {
  readonly isFree: (item: PlanItem) => boolean;
  /** today with its minute: the part of that day that has passed is not planned; null plans whole days only */
  readonly now: { readonly day: string; readonly minute: number } | null;
}

/** The name of a crew day within a plan. */
export const crewDayId = ({ crewId, day }: CrewAndDay): string => `${crewId} ${day}`;

/** Every place that planning needs a way to. */
export function placesOf({ items, properties, crews }: PlanMaterial): Places {
  const positions: Position[] = [];
  const add = (position: Position): number => positions.push(position) - 1;
  const ofCrew = new Map(
    crews.flatMap(({ id, startLatitude: latitude, startLongitude: longitude }) =>
      latitude === null || longitude === null ? [] : [[id, add({ latitude, longitude })] as const],
    ),
  );
  const named = [...new Set(items.map(({ propertyId }) => propertyId))];
  const ofProperty = new Map(
    named.flatMap((id) => {
      const position = properties.get(id)?.position;
      return position ? [[id, add(position)] as const] : [];
    }),
  );
  return { positions, ofProperty, ofCrew };
}

/** The solver's input, and the items in the order of its stops. What was visited is history and is not among them. */
export function planInputOf(
  known: PlanMaterial,
  { places, travel, wish }: { readonly places: Places; readonly travel: TravelTable; readonly wish: PlanWish },
): { readonly input: PlanInput; readonly items: readonly PlanItem[] } {
  const items = known.items.filter(({ visited, place }) => !visited && !(place && place.day > known.until));
  const crewDays = crewDaysOf(known, places, wish);
  const open = new Set(crewDays.map(({ id }) => id));
  const stops = items.map((item) => {
    const stop = stopOfItem(item, places.ofProperty.get(item.propertyId) ?? null, known);
    const stays = item.place !== null && open.has(crewDayId(item.place)) && !wish.isFree(item);
    return stays && item.place ? { ...stop, locked: { crewDayId: crewDayId(item.place), position: item.place.position } } : stop;
  });
  return { items, input: { travel, stops, crewDays, evenness: EVENNESS } };
}

/** Every crew on every day on which it works or already has stops. */
function crewDaysOf(known: PlanMaterial, places: Places, { now }: PlanWish): readonly CrewDay[] {
  const first = dayNumberOfDate(known.from);
  const days = Array.from({ length: dayNumberOfDate(known.until) - first + 1 }, (_, at) => first + at);
  const taken = new Set(known.items.flatMap(({ place }) => (place ? [crewDayId(place)] : [])));
  return known.crews.flatMap((crew) =>
    days.flatMap((number) => {
      const day = dateOfDayNumber(number);
      const works = crew.workingDays.includes(weekdayOfDayNumber(number) + 1);
      if (!works && !taken.has(crewDayId({ crewId: crew.id, day }))) return [];
      const whole = crewDayOf(crew, number, places);
      if (now?.day !== day) return [whole];
      return [restOfToday(known, whole, { places, minute: now.minute })];
    }),
  );
}

/** A crew's whole day. */
export function crewDayOf(crew: CrewRow, number: number, { ofCrew }: Pick<Places, 'ofCrew'>): CrewDay {
  const start = ofCrew.get(crew.id) ?? null;
  return {
    id: crewDayId({ crewId: crew.id, day: dateOfDayNumber(number) }),
    crewId: crew.id,
    day: number,
    skills: crew.skills,
    startPlace: start,
    endPlace: start,
    opensS: MINUTE_S * crew.dayStartsMinute,
    closesS: MINUTE_S * crew.dayEndsMinute,
    mostBusyS: Math.max(0, MINUTE_S * (crew.dayEndsMinute - crew.dayStartsMinute - crew.breakMinutes)),
    mostLoad: MOST_STOPS,
    goingOutS: GOING_OUT_S,
  };
}

interface Today {
  readonly places: Pick<Places, 'ofProperty'>;
  readonly minute: number;
}

/**
 * From now on, from where the crew came to last; where it still is, from the time at which the work there is expected to end, and not before now.
 */
export function restOfToday(known: PlanMaterial, whole: CrewDay, { places, minute }: Today): CrewDay {
  const visited = known.items.filter(({ place, visited: done }) => done && place && crewDayId(place) === whole.id);
  const last = visited.reduce<PlanItem | null>((late, one) => (late && cameAt(late) >= cameAt(one) ? late : one), null);
  const place = last ? (places.ofProperty.get(last.propertyId) ?? null) : whole.startPlace;
  const nowS = Math.max(MINUTE_S * minute, last ? MINUTE_S * leavesAt(last, whole.crewId, known) : 0);
  return restOfDay(whole, { nowS, place, doneS: Math.max(0, nowS - whole.opensS), doneLoad: visited.length });
}

const cameAt = ({ came }: PlanItem): number => came?.fromMinute ?? 0;

/** When a crew left a stop, or is expected to by its estimates and its own pace. [min] */
export function leavesAt(item: PlanItem, crewId: string, known: PlanMaterial): number {
  const { came } = item;
  return came?.untilMinute ?? cameAt(item) + minutesOf(item, known) * (known.pace.get(crewId)?.factor ?? 1);
}
