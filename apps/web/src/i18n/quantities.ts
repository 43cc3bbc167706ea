export { quantities, type QuantityKind, type UnitSystem } from '@rillbook/showing/formats/quantities.js';
