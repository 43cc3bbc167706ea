/** A controller stopped for a time: property wall times 'YYYY-MM-DDTHH:mm'; `until` null means still paused. */
export interface RainPause {
  readonly from: string;
  readonly until: string | null;
}
