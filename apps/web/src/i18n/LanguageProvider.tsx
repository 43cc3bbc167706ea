import { createContext, type ReactNode, use, useContext, useEffect, useMemo } from 'react';
import { IntlProvider } from 'react-intl';
import { catalogueHere, fetchCatalogue, type MessageId } from './catalogue.js';
import { type Formats, formatsFor, type Place } from './formats.js';
import { localeOf } from './numbers.js';

declare global {
  namespace FormatjsIntl {
    interface Message {
      ids: MessageId;
    }
    interface IntlConfig {
      locale: 'en-US' | 'es-US';
    }
  }
}

const FormatsContext = createContext<Formats | null>(null);

interface Props extends Place {
  readonly children: ReactNode;
}

/** The language, units, money and clocks in which everything below it speaks; it waits for a language that is not here yet. */
export function LanguageProvider({ language, units, currency, timeZone, children }: Props) {
  const messages = catalogueHere(language) ?? use(fetchCatalogue(language));
  const formats = useMemo(() => formatsFor({ language, units, currency, timeZone }), [language, units, currency, timeZone]);
  useEffect(() => {
    document.documentElement.lang = language;
  }, [language]);
  return (
    <IntlProvider locale={localeOf(language)} messages={messages} onError={complain}>
      <FormatsContext value={formats}>{children}</FormatsContext>
    </IntlProvider>
  );
}

/** A message that is missing or malformed is a fault of ours: it stops a test and is loud in the console. */
function complain(problem: Error): void {
  console.error(problem);
}

/** The formats of the place this component stands in. */
export function useFormats(): Formats {
  const formats = useContext(FormatsContext);
  if (!formats) throw new Error('useFormats stands outside a LanguageProvider.');
  return formats;
}
