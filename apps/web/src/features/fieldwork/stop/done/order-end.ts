/** How a work order ended for the crew. */
export interface End {
  readonly done: boolean;
  readonly note: string;
  readonly resolvesFinding: boolean;
}

/** Whether nothing more is to be said of a work order. */
export const isEnded = (state: string): boolean => state === 'done' || state === 'dropped';

/** Whether the crew may end it: what waits for approval may not be done yet. */
export const isDecidable = (state: string): boolean => !isEnded(state) && state !== 'waiting for approval';
