/** The side of the street that a rule names by its house numbers. */
export const addressParities = ['odd', 'even'] as const;
export type AddressParity = (typeof addressParities)[number];
