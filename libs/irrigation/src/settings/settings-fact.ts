/** How a fact came to be known. Found and left are replayed; planned never is. */
export type SettingsRecord = 'found' | 'left' | 'planned';

/** What the controller's dial stands at. `weather` means that the controller computes its own run times. */
export type ControllerState = 'on' | 'off' | 'weather' | 'unknown';

/** A day of the week as the import folder writes it. */
export type Weekday = 'Mon' | 'Tue' | 'Wed' | 'Thu' | 'Fri' | 'Sat' | 'Sun';

/** The days on which a program starts. `odd` and `even` are days of the month; `every` runs on `from` and each n-th day after it. */
export type ProgramDays =
  | { readonly kind: 'daily' }
  | { readonly kind: 'weekdays'; readonly weekdays: readonly Weekday[] }
  | { readonly kind: 'odd' }
  | { readonly kind: 'even' }
  | { readonly kind: 'every'; readonly everyDays: number; readonly from: string };

/** One station in a program: its total minutes per start at 100 %; cycles split them and never multiply them. */
export interface StationRun {
  readonly station: number;
  readonly minutes: number;
  readonly cycles: number;
  readonly soakMinutes: number;
}

/** One program: days, starts in minutes after local midnight, percent adjust and the stations in the order in which they run. */
export interface Program {
  readonly name: string;
  readonly days: ProgramDays;
  readonly starts: readonly number[];
  readonly adjustPercent: number;
  readonly stations: readonly StationRun[];
}

/**
 * Everything a controller is set to at a time. Facts are dated and never edited.
 *
 * `effectiveAt` is the property's wall time, 'YYYY-MM-DDTHH:mm'; a wall time that occurs twice is the first occurrence.
 */
export interface SettingsFact {
  readonly effectiveAt: string;
  readonly record: SettingsRecord;
  readonly state: ControllerState;
  readonly programs: readonly Program[];
}
