import { typedNumber } from '../../i18n/numbers.js';
import type { ProgramDraft } from '../program-draft.js';

/** The most that a controller is on record to hold; nothing where nobody has said. */
export interface ControllerHolds {
  readonly maxAdjustPercent?: number | null;
  readonly maxMinutes?: number | null;
  readonly startsPerProgram?: number | null;
}

/** Something typed that the controller cannot hold if its record is right. */
export interface BeyondController {
  readonly what: 'percent' | 'minutes' | 'starts';
  readonly program: string;
  readonly station: string | null;
  readonly found: number;
  readonly most: number;
}

const above = (found: number | null, most: number | null | undefined): found is number =>
  found !== null && most !== null && most !== undefined && found > most;

/** What is typed beyond what a controller is on record to hold: a slip of the finger or of the eye, or the record is wrong. */
export function beyondController(programs: readonly ProgramDraft[], holds: ControllerHolds): BeyondController[] {
  return programs.flatMap(({ name, percent, minutes, starts }) => {
    const found: BeyondController[] = [];
    const tell = (what: BeyondController['what'], typed: number | null, most: number | null | undefined, station: string | null = null) => {
      if (above(typed, most)) found.push({ what, program: name, station, found: typed, most: most ?? typed });
    };
    tell('percent', typedNumber(percent), holds.maxAdjustPercent);
    for (const [station, typed] of Object.entries(minutes)) tell('minutes', typedNumber(typed), holds.maxMinutes, station);
    tell('starts', new Set(starts.filter(Boolean)).size, holds.startsPerProgram);
    return found;
  });
}
