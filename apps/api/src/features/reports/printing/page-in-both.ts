import { inMarkup } from './in-markup.js';

/** A page that says one sentence in English and in Spanish, for a reader whose language is not known; the language that is named comes first. */
export function pageInBoth([english, spanish]: readonly [english: string, spanish: string], first: 'en' | 'es' = 'en'): string {
  const said = { en: inMarkup(english), es: inMarkup(spanish) };
  const second = first === 'en' ? 'es' : 'en';
  return `<!doctype html><html lang="${first}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><meta name="robots" content="noindex"><title>${said[first]}</title></head><body><main><h1>${said[first]}</h1><p lang="${second}">${said[second]}</p></main></body></html>`;
}
