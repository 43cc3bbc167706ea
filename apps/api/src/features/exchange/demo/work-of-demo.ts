/** A piece of work that the office of the demonstration has made of a finding. */
export interface DemoOrder {
  readonly findingKind: string;
  /** on this property, or, where nothing of the kind is open there, on the one where it costs most */
  readonly property: string;
  readonly kind: 'adjust' | 'inspect' | 'repair' | 'read';
  readonly what: string;
  readonly estimateMinutes: number;
  readonly labourHours?: number;
  readonly labourRate?: number;
  readonly parts?: readonly { readonly name: string; readonly count: number; readonly price: number }[];
  /** who goes, and when; nobody yet where the client's approval is waited for */
  readonly given: { readonly crew: string; readonly day: string } | null;
}

/** The day on which the demonstration's world stands still, and the next Monday. */
export const DEMO_DAY = '2026-09-24';
const NEXT_MONDAY = '2026-09-28';

/** The work on the desk of each company that Thursday morning, by its folder. */
export const demoOrders: Readonly<Record<string, readonly DemoOrder[]>> = {
  'larkspur-grounds': [
    {
      findingKind: 'over-programmed',
      property: 'Quail Commons',
      kind: 'adjust',
      what: "July's minutes still run. Set the programs as planned for September and note them as left.",
      estimateMinutes: 45,
      given: { crew: 'Crew 1', day: DEMO_DAY },
    },
    {
      findingKind: 'unexplained use',
      property: 'Old Mill Shops',
      kind: 'inspect',
      what: 'Close all valves and watch the meter for ten minutes; walk the main line if it still turns.',
      estimateMinutes: 60,
      given: { crew: 'Crew 2', day: DEMO_DAY },
    },
    {
      findingKind: 'over-programmed',
      property: 'Juniper Court Offices',
      kind: 'adjust',
      what: 'Controller B stands at 140 percent: bring it down to the planned percent.',
      estimateMinutes: 30,
      given: { crew: 'Crew 1', day: NEXT_MONDAY },
    },
    {
      findingKind: 'under-programmed',
      property: 'Cutbank Trail',
      kind: 'adjust',
      what: 'Three lawns get too little: set their minutes as planned, then look at the turf again in a week.',
      estimateMinutes: 40,
      given: { crew: 'Crew 2', day: NEXT_MONDAY },
    },
    {
      findingKind: 'steady flow',
      property: 'Quail Commons',
      kind: 'repair',
      what: "The play lawn's valve does not close at night: replace it, and the one beside it of the same age.",
      estimateMinutes: 180,
      labourHours: 7,
      labourRate: 95,
      parts: [
        { name: 'Valve, 1 1/2 in', count: 2, price: 148 },
        { name: 'Solenoid, 24 V', count: 2, price: 31.5 },
      ],
      given: null,
    },
  ],
};
