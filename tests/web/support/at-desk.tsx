import { render, type RenderResult } from '@testing-library/react';
import type { ReactNode } from 'react';
import { MemoryRouter } from 'react-router';
import { LanguageProvider } from '../../../apps/web/src/i18n/LanguageProvider.js';
import type { Language } from '../../../apps/web/src/i18n/numbers.js';
import type { UnitSystem } from '../../../apps/web/src/i18n/quantities.js';
import { ToastProvider } from '../../../apps/web/src/ui/dialogs/Toasts.js';
import { DisplayProvider } from '../../../apps/web/src/ui/theme/DisplayProvider.js';

interface Place {
  readonly language?: Language;
  readonly units?: UnitSystem;
  readonly at?: string;
}

/** Draws something as it stands in the app: in a language, with units, at an address. */
export function atDesk(what: ReactNode, { language = 'en', units = 'us', at = '/' }: Place = {}): RenderResult {
  return render(
    <DisplayProvider>
      <LanguageProvider language={language} units={units} currency="USD" timeZone="America/Denver">
        <MemoryRouter initialEntries={[at]}>
          <ToastProvider>{what}</ToastProvider>
        </MemoryRouter>
      </LanguageProvider>
    </DisplayProvider>,
  );
}
