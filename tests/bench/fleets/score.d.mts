/** How many faults could be judged, were found, and were found in time. */
export interface Recall {
  readonly judged: number;
  readonly found: number;
  readonly inTime: number;
  readonly recall: number | null;
  readonly recallInTime: number | null;
}

/** The parts of a score that its test looks at. */
export interface FleetScore {
  readonly keepsHistory: boolean;
  readonly properties: number;
  readonly siteYears: number;
  readonly unexplainedUse: Readonly<Record<string, Recall>>;
  readonly byKindAndBand: Readonly<Record<string, Recall>>;
  readonly delays: Readonly<Record<string, { found: number; medianDays: number | null; medianReadings: number | null }>>;
  readonly falseAlarms: { count: number; onHealthy: number; healthyProperties: number; byKind: Readonly<Record<string, number>> };
  readonly attribution: { found: number; right: number; share: number | null };
  readonly steady: { above: Recall; below: Recall };
  readonly misreads: Readonly<Record<string, Recall>>;
  readonly rollovers: { count: number; calledMisread: number };
  readonly flowTests: Recall & { leakAlarms: number };
  readonly settingsGaps: Readonly<Record<string, { clear: number; found: number; opened: number; without: number }>>;
  readonly curve: readonly { leastConfidence: number; recall: number | null; falseAlarmsPerSiteYear: number | null }[];
}

export function scoreFleet(fleet: {
  files: Readonly<Record<string, string>>;
  truth: string;
  gaps?: string;
  findings: string;
  history?: boolean;
}): FleetScore;
