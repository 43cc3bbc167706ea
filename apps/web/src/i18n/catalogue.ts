import { field as fieldEn } from './messages/en/field/field.js';
import { frame as frameEn } from './messages/en/frame.js';
import { gauge as gaugeEn } from '@rillbook/showing/words/en/gauge.js';
import { maps as mapsEn } from './messages/en/maps.js';
import { office as officeEn } from './messages/en/office/office.js';
import { parts as partsEn } from './messages/en/parts.js';
import { plants as plantsEn } from '@rillbook/showing/words/en/plants.js';
import { setup as setupEn } from './messages/en/setup/setup.js';
import { units as unitsEn } from '@rillbook/showing/words/en/units.js';
import { field as fieldEs } from './messages/es/field/field.js';
import { frame as frameEs } from './messages/es/frame.js';
import { gauge as gaugeEs } from '@rillbook/showing/words/es/gauge.js';
import { maps as mapsEs } from './messages/es/maps.js';
import { office as officeEs } from './messages/es/office/office.js';
import { parts as partsEs } from './messages/es/parts.js';
import { plants as plantsEs } from '@rillbook/showing/words/es/plants.js';
import { setup as setupEs } from './messages/es/setup/setup.js';
import { units as unitsEs } from '@rillbook/showing/words/es/units.js';
import type { Language } from './numbers.js';

/** A feature adds its two files here; each Spanish file has the type of its English one. */
const english = { ...unitsEn, ...plantsEn, ...frameEn, ...partsEn, ...gaugeEn, ...mapsEn, ...officeEn, ...fieldEn, ...setupEn };
const spanish: Record<MessageId, string> = {
  ...unitsEs,
  ...plantsEs,
  ...frameEs,
  ...partsEs,
  ...gaugeEs,
  ...mapsEs,
  ...officeEs,
  ...fieldEs,
  ...setupEs,
};

export type MessageId = keyof typeof english;

/** Every message of one language. */
export const catalogue = (language: Language): Readonly<Record<MessageId, string>> => (language === 'es' ? spanish : english);
