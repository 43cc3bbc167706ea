/** A radiation by the day or by the hour: formulas that only share, compare or subtract radiations hold for both. */
export type RadiationUnit = 'MJ/m2/d' | 'MJ/m2/h';
