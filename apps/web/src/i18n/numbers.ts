export { type Known, type Language, localeOf, NOT_KNOWN, numberFormats, typedNumber } from '@rillbook/showing/formats/numbers.js';
