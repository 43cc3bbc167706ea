import { problem } from '../../platform/problems/problem.js';

/** Faults of field work. */
export const fieldworkProblems = {
  /** The work order is done or dropped: nothing more can be decided about it. */
  workOrderEnded: problem(
    'WORK_ORDER_ENDED',
    409,
    (d: { workOrderId: string; state: string }) =>
      `Work order ${d.workOrderId} is ${d.state}. Make a new work order for what is still to be done.`,
  ),
  /** A finding has at most one live work order of a kind. */
  workOrderExists: problem(
    'WORK_ORDER_EXISTS',
    409,
    (d: { findingId: string; kind: string }) =>
      `Finding ${d.findingId} already has a work order of kind '${d.kind}' that is not done. Change that one, or choose another kind.`,
  ),
  /** Only what waits for approval can be approved. */
  notWaiting: problem(
    'WORK_ORDER_NOT_WAITING',
    409,
    (d: { workOrderId: string; state: string }) =>
      `Work order ${d.workOrderId} does not wait for approval: it is ${d.state}. Load the page again.`,
  ),
  /** Nobody approves a price that is not named. */
  notPriced: problem(
    'WORK_ORDER_NOT_PRICED',
    409,
    (d: { workOrderId: string }) =>
      `Work order ${d.workOrderId} has no price yet, or hours without a rate. Name its price first, and approve it then.`,
  ),
  /** The finding was resolved or dismissed. */
  findingSettled: problem(
    'FINDING_SETTLED',
    409,
    (d: { findingId: string; state: string }) => `Finding ${d.findingId} is ${d.state}. Open it again before giving out work on it.`,
  ),
  /** The same device record came with other content. */
  visitConflict: problem(
    'VISIT_CONFLICT',
    409,
    (d: { deviceRecordId: string; visitId: string; stopId: string | null; arrivedAt: string }) =>
      `Device record ${d.deviceRecordId} is already kept as visit ${d.visitId} with another stop or arrival (${d.arrivedAt}). Record a new visit under a new id.`,
  ),
  /** An arrival is taken back by who told of it, and only where nothing was done. */
  visitNotEmpty: problem(
    'VISIT_NOT_EMPTY',
    409,
    (d: { visitId: string }) =>
      `Visit ${d.visitId} stays: something was recorded at the stop, or the arrival is somebody else’s. Close the stop, and say what was done.`,
  ),
  /** The phone told of another photo under the same name. */
  photoConflict: problem(
    'PHOTO_CONFLICT',
    409,
    (d: { photoId: string; kind: string; takenAt: string }) =>
      `Photo ${d.photoId} is already kept with another kind or time (${d.kind}, ${d.takenAt}). Tell of a new photo under a new id.`,
  ),
  /** The photo has another picture already. */
  pictureConflict: problem(
    'PICTURE_CONFLICT',
    409,
    (d: { photoId: string }) =>
      `Photo ${d.photoId} has another picture already. Tell of a new photo under a new id, and send this picture there.`,
  ),
  /** The photo was told of; its picture is still on the phone. */
  pictureNotHere: problem(
    'PICTURE_NOT_HERE',
    404,
    (d: { photoId: string }) =>
      `The picture of photo ${d.photoId} has not arrived: it is still on the phone that took it. Try again later.`,
  ),
  /** The phone told of another test under the same name. */
  zoneTestConflict: problem(
    'ZONE_TEST_CONFLICT',
    409,
    (d: { testId: string; kind: string; testedAt: string }) =>
      `Test ${d.testId} is already kept with another zone, kind or time (${d.kind}, ${d.testedAt}). Tell of a new test under a new id.`,
  ),
  /** Only the last planning of a month can be undone, and once. */
  planNotLast: problem(
    'PLAN_NOT_LAST',
    409,
    (d: { planId: string }) =>
      `Plan ${d.planId} is not the last one of its month, or is undone already. Load the month again; single stops can still be moved by hand.`,
  ),
  /** It got a day, was done or dropped meanwhile. */
  nothingToPlace: problem(
    'NOTHING_TO_PLACE',
    404,
    (d: { itemId: string }) =>
      `Nothing without a day is called '${d.itemId}' in this month. Load the month again: it may have a day by now.`,
  ),
  /** Somebody was there: what happened on a day stays on it. */
  stopVisited: problem(
    'STOP_VISITED',
    409,
    (d: { stopId: string }) => `Stop ${d.stopId} was visited and stays on its day. Make a new work order for what is still to be done.`,
  ),
  /** Somebody else plans too: what one of them sees is not where it was. */
  stopMovedMeanwhile: problem(
    'STOP_MOVED_MEANWHILE',
    409,
    (d: { stopId: string; changedBy: string | null }) =>
      `${d.changedBy ?? 'Somebody'} moved or locked this stop meanwhile. Look where it stands now, and decide again.`,
  ),
  /** Somebody changed the stop or visit since it was read. */
  changedSinceRead: problem(
    'CHANGED_SINCE_READ',
    409,
    (d: { thing: string; id: string; version: number; changedBy: string | null }) =>
      `The ${d.thing} ${d.id} was changed${d.changedBy ? ` by ${d.changedBy}` : ''} since you read it (it is now version ${d.version}). Load it again and decide.`,
  ),
};
