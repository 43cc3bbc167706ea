import { phone } from './phone.js';
import { monthPlan } from './month-plan.js';
import { phones } from './phones.js';
import { rain } from './rain.js';
import { routes } from './routes.js';
import { sheet } from './sheet.js';
import { stop } from './stop.js';
import { tests } from './tests.js';
import { water } from './water.js';

/** The words of field work, and of what a client sees. */
export const field = { ...stop, ...tests, ...phone, ...phones, ...rain, ...routes, ...monthPlan, ...sheet, ...water };
