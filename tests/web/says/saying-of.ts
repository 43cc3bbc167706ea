import { createIntl } from 'react-intl';
import { catalogue } from '../support/catalogues.js';
import { formatsFor } from '../../../apps/web/src/i18n/formats.js';
import { type Language, localeOf } from '../../../apps/web/src/i18n/numbers.js';
import type { UnitSystem } from '../../../apps/web/src/i18n/quantities.js';
import { type Names, namesOf } from '../../../apps/web/src/says/names.js';
import type { Saying } from '../../../apps/web/src/says/saying.js';

export const someNames: Names = namesOf({
  zones: [
    { id: 'z1', name: 'Pool lawn', station: 3 },
    { id: 'z2', name: 'Entry beds', station: 6 },
  ],
  meters: [{ id: 'm1', name: 'Irrigation meter' }],
  controllers: [{ id: 'c1', name: 'Clubhouse' }],
});

/** What a sentence is made with; a message that is missing or malformed stops the test. */
export function sayingOf(language: Language, units: UnitSystem = 'us', names: Names = someNames): Saying {
  const intl = createIntl({
    locale: localeOf(language),
    messages: catalogue(language),
    onError: (problem) => {
      throw problem;
    },
  });
  return { intl, names, formats: formatsFor({ language, units, currency: 'USD', timeZone: 'America/Los_Angeles' }) };
}
