import type { Address } from '../../../../page/use-address.js';
import { dayAddress, type DayPlace } from '../../urls.js';

export const sheetAddress: Address<DayPlace> = dayAddress;

/** The route sheet of a crew's day, for paper. */
export const sheetPath = (day: string, crewId: string): string => `/routes/sheet?day=${day}&crew=${crewId}`;
