import type { ComponentType } from 'react';
import { NotFoundPage } from './NotFoundPage.js';

/** Fetches a page's file when its address is first visited. */
export type PageFile = () => Promise<ComponentType>;

/** A page that is not written yet leads to the same answer as an address that never was. */
const notYet: PageFile = async () => NotFoundPage;

// Give a page its own file here: async () => (await import('../features/findings/FindingsPage.js')).FindingsPage

/** Open to all. */
export const doorPages: Readonly<Record<string, PageFile>> = {
  '/sign-in': notYet,
};

/** In the desk's frame. */
export const deskPages: Readonly<Record<string, PageFile>> = {
  '/properties/:id': notYet,
  '/findings': notYet,
  '/findings/:id': notYet,
  '/month': notYet,
  '/routes': notYet,
  '/reports': notYet,
  '/setup/*': notYet,
  '/water': notYet,
};

/** The first page of those who read the portfolio. */
export const portfolioPage: PageFile = notYet;

/** Pages of the field bring their own frame. */
export const fieldPages: Readonly<Record<string, PageFile>> = {
  '/today': notYet,
  '/today/:stopId': notYet,
};
