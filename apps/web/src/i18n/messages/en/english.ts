import { gauge } from '@rillbook/showing/words/en/gauge.js';
import { plants } from '@rillbook/showing/words/en/plants.js';
import { units } from '@rillbook/showing/words/en/units.js';
import { field } from './field/field.js';
import { frame } from './frame.js';
import { maps } from './maps.js';
import { office } from './office/office.js';
import { parts } from './parts.js';
import { setup } from './setup/setup.js';
import { told } from './told.js';

/** Every message in English. A feature adds its file here, and its Spanish one beside: each has the type of its English one. */
export const english = { ...units, ...plants, ...frame, ...parts, ...gauge, ...maps, ...office, ...field, ...setup, ...told };
