/** How a zone gets its water, in the words of the import folder. */
export type IrrigationMethod = 'spray' | 'rotor' | 'rotary nozzle' | 'bubbler' | 'microspray' | 'drip' | 'subsurface drip' | 'hand';

/** All methods, in the order in which they are offered. */
export const irrigationMethods: readonly IrrigationMethod[] = [
  'spray',
  'rotor',
  'rotary nozzle',
  'bubbler',
  'microspray',
  'drip',
  'subsurface drip',
  'hand',
];
