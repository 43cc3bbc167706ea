import { asWithoutSensor, replayWithSensor, type SensorReplay } from '@rillbook/irrigation/settings/replay/replay-with-sensor.js';
import type { AccountController, AccountFacts } from '../account-input.js';
import type { PreparedMonth } from './prepared-months.js';

/**
 * What a controller's settings put out in the covered days of a month.
 *
 * @param controller - The controller with its facts and pauses. [code]
 * @param prepared - The month, maybe with the controller's replay. [d]
 * @param clockChanges - The place's changes of clock in the month. [code]
 * @returns The replay with and without what a rain sensor may have held back. [min]
 * @throws {DomainError} As `replayController`.
 */
export function replayOfMonth(
  controller: AccountController,
  prepared: PreparedMonth,
  clockChanges: AccountFacts['clockChanges'],
): SensorReplay {
  const { id, traits, facts, pauses } = controller;
  const present = prepared.replays?.get(id);
  if (present) return asWithoutSensor(present);
  const { firstDay, days, weather } = prepared.covered;
  return replayWithSensor({ firstDay, days, facts, pauses, traits, clockChanges }, weather);
}
