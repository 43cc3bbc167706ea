/** What is known of a stop that calls for care. */
export interface CautionFacts {
  readonly recycledWater: boolean;
  readonly controller: boolean;
  readonly backflowAssembly: boolean;
  /** repair or upgrade is to be done here */
  readonly digging: boolean;
  /** the highest on record at its meters [kPa] */
  readonly pressureKpa: number | null;
  /** the highest air temperature of the day and the three before it [°C] */
  readonly tmaxC: number | null;
  /** the property has notes: gate, dog, whom to call */
  readonly notes: boolean;
}

/** 80 psi at a meter: above it lines and fittings are handled as high pressure (common practice). [kPa] */
export const HIGH_PRESSURE_KPA = 552;

/** Days from which on crews need shade, water and breaks (common practice). [°C] */
export const HOT_DAY_C = 35;

/** Codes of the cautions, in the order in which they are shown; the screens have the words. */
export function cautionsOf(facts: CautionFacts): string[] {
  const told: readonly (readonly [code: string, holds: boolean])[] = [
    ['access-note', facts.notes],
    // Not for drinking; its signs stay.
    ['recycled-water', facts.recycledWater],
    // A licensed electrician opens the mains compartment.
    ['mains-voltage', facts.controller],
    // A certified tester tests it.
    ['backflow', facts.backflowAssembly],
    // The utility locate service is called first.
    ['digging', facts.digging],
    ['pressure', (facts.pressureKpa ?? 0) > HIGH_PRESSURE_KPA],
    ['heat', (facts.tmaxC ?? 0) >= HOT_DAY_C],
  ];
  return told.filter(([, holds]) => holds).map(([code]) => code);
}
