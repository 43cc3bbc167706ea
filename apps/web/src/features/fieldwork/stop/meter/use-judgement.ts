import { type JudgedRegister, RegisterHistory } from '@rillbook/metering/intervals/register-history.js';
import { isVolumeUnit } from '@rillbook/units/volume.js';
import { useMemo } from 'react';

interface MeterRead {
  readonly id: string;
  readonly readAt: string;
  readonly register: number;
  readonly replacedById?: string | null;
}

/** A meter as it counts, and its readings, the newest first. */
export interface MeterOfReadings {
  readonly unit: string;
  readonly multiplier: number;
  readonly digits?: number | null;
  readonly installedOn?: string | null;
  readonly firstRegister?: number | null;
  readonly readings: readonly MeterRead[];
}

export type Judgement = JudgedRegister;

const FINE: ReadonlySet<string> = new Set(['first', 'ok', 'rollover']);

/** Whether the number needs a second look at the dial. */
export const isDoubtful = (judgement: string): boolean => !FINE.has(judgement);

/** As many readings as the phone is given to judge by; fewer are all that there are. */
export const READINGS_ON_PHONE = 60;

/** Those that stand, the newest first: what is read again takes the place of the reading that it names. */
export const standingReadings = (readings: readonly MeterRead[], replacesId: string | null): readonly MeterRead[] =>
  readings.filter(({ id, replacedById }) => !replacedById && id !== replacesId);

/** What a register looks like beside the readings before it: the same judgement as the server's, made on the phone. */
export function judgeOnPhone(
  meter: MeterOfReadings,
  { register, readAt, replacesId }: { readonly register: number; readonly readAt: Date; readonly replacesId: string | null },
): Judgement | null {
  const { unit, multiplier, digits = null, installedOn = null, firstRegister = null } = meter;
  if (!isVolumeUnit(unit) || !Number.isFinite(register)) return null;
  const history = new RegisterHistory({ unit, multiplier, digits, installedOn, firstRegister }, meter.readings.length < READINGS_ON_PHONE);
  const standing = standingReadings(meter.readings, replacesId).filter((reading) => Date.parse(reading.readAt) < readAt.getTime());
  for (const reading of standing.toReversed()) history.follow({ register: reading.register, readAt: new Date(reading.readAt) });
  return history.judge({ register, readAt });
}

interface Typed {
  readonly typed: string;
  /** the reading in whose place it comes */
  readonly replacesId: string | null;
}

/** The judgement of what is typed, at once; null while nothing is. */
export function useJudgement(meter: MeterOfReadings, { typed, replacesId }: Typed, now: () => Date): Judgement | null {
  return useMemo(
    () => (typed === '' ? null : judgeOnPhone(meter, { register: Number(typed), readAt: now(), replacesId })),
    [meter, typed, replacesId, now],
  );
}
