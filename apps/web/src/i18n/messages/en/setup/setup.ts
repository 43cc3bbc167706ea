import { aids } from './aids.js';
import { brand } from './brand.js';
import { exchange } from './exchange.js';
import { fields } from './fields.js';
import { people } from './people.js';
import { plans } from './plans.js';
import { things } from './things.js';
import { weather } from './weather.js';

/** The words of the pages of Setup. */
export const setup = { ...exchange, ...people, ...things, ...fields, ...weather, ...brand, ...plans, ...aids };
