import { gauge } from '@rillbook/showing/words/es/gauge.js';
import { plants } from '@rillbook/showing/words/es/plants.js';
import { units } from '@rillbook/showing/words/es/units.js';
import { field } from './field/field.js';
import { frame } from './frame.js';
import { maps } from './maps.js';
import { office } from './office/office.js';
import { parts } from './parts.js';
import { setup } from './setup/setup.js';
import { told } from './told.js';
import type { english } from '../en/english.js';

/** Every message in Spanish. */
export const spanish: Record<keyof typeof english, string> = {
  ...units,
  ...plants,
  ...frame,
  ...parts,
  ...gauge,
  ...maps,
  ...office,
  ...field,
  ...setup,
  ...told,
};
