import { catalogueHere, fetchCatalogue, type Messages } from '../../../apps/web/src/i18n/catalogue.js';
import type { Language } from '../../../apps/web/src/i18n/numbers.js';

// Both languages are here before a test begins, as one of them is before a page is drawn.
await Promise.all([fetchCatalogue('en'), fetchCatalogue('es')]);

/** Every message of one language. */
export function catalogue(language: Language): Messages {
  const messages = catalogueHere(language);
  if (!messages) throw new Error(`The messages of '${language}' were not fetched.`);
  return messages;
}
