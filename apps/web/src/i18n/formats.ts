export { type Formats, formatsFor, type Place, type VolumeColumn } from '@rillbook/showing/formats/formats.js';
