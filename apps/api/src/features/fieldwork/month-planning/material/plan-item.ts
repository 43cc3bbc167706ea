import type { CrewPace } from '@rillbook/routing/day/crew-pace.js';
import type { VisitHours } from '@rillbook/routing/day/open-windows.js';
import type { Position } from '@rillbook/routing/travel/great-circle-distance.js';
import type { CrewRow } from '../../crews/crew.entity.js';
import type { WorkOrderKind } from '../../orders/work-order-kinds.js';

/** A crew and one of its days. */
export interface CrewAndDay {
  readonly crewId: string;
  readonly day: string;
}

/** A work order as far as planning needs it. */
export interface ItemOrder {
  readonly id: string;
  readonly version: number;
  readonly kind: WorkOrderKind;
  readonly state: string;
  readonly minutes: number | null;
  readonly notBefore: string | null;
  readonly dueOn: string | null;
  readonly skills: readonly string[];
}

/** When a crew was at a stop, in minutes since midnight; without an end while it is there. */
export interface Came {
  readonly fromMinute: number;
  readonly untilMinute: number | null;
}

/** Something that somebody has to go to a property for: a stop that is there, or work and a due visit that have no day yet. */
export interface PlanItem {
  /** the same for the same thing as long as it has no day */
  readonly id: string;
  readonly propertyId: string;
  readonly stopId: string | null;
  readonly place: (CrewAndDay & { readonly position: number }) | null;
  readonly locked: boolean;
  readonly visited: boolean;
  readonly came: Came | null;
  readonly orders: readonly ItemOrder[];
  /** the day on which the property's visit interval ends */
  readonly visitDueOn: string | null;
}

/** What is known of a property that somebody goes to. */
export interface ItemProperty {
  readonly id: string;
  readonly position: Position | null;
  readonly everyDays: number | null;
  readonly visitMinutes: number | null;
  readonly skills: readonly string[];
  readonly hours: readonly VisitHours[];
}

/** Everything that a stretch of days is planned from. */
export interface PlanMaterial {
  readonly from: string;
  readonly until: string;
  readonly items: readonly PlanItem[];
  readonly properties: ReadonlyMap<string, ItemProperty>;
  readonly crews: readonly CrewRow[];
  readonly pace: ReadonlyMap<string, CrewPace>;
}
