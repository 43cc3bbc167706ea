export { type Known, type Language, localeOf, NOT_KNOWN, typedNumber } from '@rillbook/showing/formats/numbers.js';
