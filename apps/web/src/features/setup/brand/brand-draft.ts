import { paperColours } from '@rillbook/showing/colours/paper-colours.js';
import type { ReportBrandInput, SetupBrandQuery } from '../../../graphql/__generated__/graphql.js';
import { contrastOnWhite, LEAST_CONTRAST } from './contrast.js';

export type Brand = SetupBrandQuery['reportBrand'];

/** The dress as it is being written; '' where nothing is. */
export interface BrandDraft {
  readonly name: string;
  readonly colour: string;
  readonly contact: string;
  readonly logo: string | null;
}

/** The report's own colour, where the office has none. */
export const OWN_COLOUR = paperColours.water;

export const draftOf = ({ name, colour, contact, logo }: Brand): BrandDraft => ({
  name: name ?? '',
  colour: colour ?? '',
  contact: contact ?? '',
  logo: logo ?? null,
});

/** What is kept; a logo that stays is left out. */
export const inputOf = ({ name, colour, contact, logo }: BrandDraft, { logo: kept }: Brand): ReportBrandInput => ({
  name: name || null,
  colour: colour || null,
  contact: contact || null,
  ...(logo === (kept ?? null) ? {} : { logo }),
});

/** Whether a colour cannot be read on white paper. */
export const isPale = (colour: string): boolean => colour !== '' && (contrastOnWhite(colour) ?? LEAST_CONTRAST) < LEAST_CONTRAST;
