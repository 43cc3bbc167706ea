/** The kinds of work, and how long each takes where nobody says: common practice, to be overwritten by whoever knows the place. [min] */
export const ESTIMATE_MINUTES = {
  adjust: 20,
  inspect: 30,
  repair: 60,
  read: 5,
  upgrade: 240,
  'plant care': 60,
} as const;

export type WorkOrderKind = keyof typeof ESTIMATE_MINUTES;

/** The kinds, in the exact words of the column and of the screen. */
export const WORK_ORDER_KINDS = Object.keys(ESTIMATE_MINUTES) as readonly WorkOrderKind[];

/** The life of a work order. */
export const WORK_ORDER_STATES = ['waiting for approval', 'open', 'given out', 'done', 'dropped'] as const;
export type WorkOrderState = (typeof WORK_ORDER_STATES)[number];

/** Whether nothing more can be decided about it. */
export const hasEnded = (state: WorkOrderState): state is 'done' | 'dropped' => state === 'done' || state === 'dropped';
