/** Where a zone's flow comes from; `derived` is precipitation rate times area. */
export type FlowSource = 'measured' | 'nameplate' | 'assumed' | 'derived';

/**
 * Relative standard deviations of inputs that carry none of their own. Common practice where no source is named: they are this product's
 * documented defaults, chosen wide rather than narrow, and each belongs to what is systematic about the input.
 */
export const defaultRelativeSd = {
  /** Area from a map or a wheel; a guessed one. */
  area: { recorded: 0.05, assumed: 0.15 },
  /** Plant factor given for the zone, as a number or a water-need word; one of the kind of plants alone. Landscape coefficients are estimates in either case. */
  plantFactor: { recorded: 0.15, assumed: 0.25 },
  /** Added where density or shade is a default. */
  densityOrShade: 0.1,
  /** Storage of the root zone from soil and roots given; from defaults. */
  rootStorage: { recorded: 0.2, assumed: 0.35 },
  /** Uniformity from a catch-can test; the method's default. */
  uniformity: { recorded: 0.08, assumed: 0.15 },
  /** Rain at the property against rain at its station. */
  rain: 0.15,
  /** Flow by its source; for a derived flow this is the precipitation rate, and the area's own error is added. */
  flow: { measured: 0.05, nameplate: 0.15, assumed: 0.3, derived: 0.2 } satisfies Record<FlowSource, number>,
  /** Starts that a rain sensor of known threshold held back, relative to their water: the hour of the rain and its drying are not known. */
  rainSensor: 0.3,
  /** Run times that a controller computes from weather or soil moisture itself, taken as the zone's need. */
  settingsFromWeather: 0.3,
  /** Water by hand, as told. */
  handVolume: 0.3,
  /** A meter at normal flow: 98.5 to 101.5 % (US Navy MO-221, following industry practice). */
  meter: 0.015,
  /** Indoor use as stated; as the mean of winter months. */
  indoor: { stated: 0.25, winter: 0.15 },
  /** Days that were filled in, relative to what was filled. */
  filled: 0.3,
  /**
   * An interval that crosses the month's end: how its water follows the weather, sd = share · (its share) · (1 - its share); and on which
   * side of the end the nearest run fell, sd = run · its mean day. Timers water every second or third day, so one run is two or three mean
   * days of water.
   */
  apportioning: { share: 0.2, run: 1.25 },
} as const;
